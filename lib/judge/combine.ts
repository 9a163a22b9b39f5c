import { minutesBetween } from '#shared/time.ts';
import type { Stage, StageName, Stages, Verdict } from './answer.ts';
import type { StepRecord } from './record.ts';
import { sorted, stageEntries } from './stage.ts';

/** The stages of each piece that a rule judged, and those that are not judged by piece. */
export type Judged = {
  byPiece: { piece: number | null; stages: Stages }[];
  /** Stages of the whole step: by facts or by the batch; and every stage, when no piece was read. */
  whole: Stages;
  /** The pieces (null = the batch) with a food reading in the step. */
  read: (number | null)[];
};

/** Stages that speak of no piece, so that an unread piece takes nothing from them. */
const notByPiece: ReadonlySet<StageName> = new Set(['house_plan_interval', 'oven']);

function worstVerdict(stages: readonly Stage[]): Verdict {
  if (stages.some((stage) => stage.verdict === 'broken')) return 'broken';
  if (stages.some((stage) => stage.verdict === 'not_shown')) return 'not_shown';
  return stages.some((stage) => stage.verdict === 'kept') ? 'kept' : 'not_applicable';
}

function isOpen(verdict: Verdict, stages: readonly Stage[]): boolean {
  if (verdict === 'kept') return stages.every((stage) => stage.open);
  if (verdict !== 'not_shown') return false;
  const noneLost = stages.every((stage) => stage.open || stage.verdict === 'kept');
  return noneLost && stages.some((stage) => stage.open);
}

/** The greatest, where null (not known) is the greatest of all. */
const greatestOrUnknown = (values: readonly (number | null)[]): number | null =>
  values.reduce((worst, value) => (worst === null || value === null ? null : Math.max(worst, value)));

const known = (values: readonly (number | null | undefined)[]): number[] =>
  values.filter((value) => value !== null && value !== undefined);

const greatest = (values: readonly (number | null | undefined)[]): number | null =>
  known(values).reduce<number | null>((most, value) => (most === null || value > most ? value : most), null);

const earliest = (values: readonly (number | null | undefined)[]): number | null =>
  known(values).reduce<number | null>(
    (least, value) => (least === null || value < least ? value : least),
    null,
  );

/** What to do next: the piece that is worst off says it, the earliest among equals. */
function nextOf(verdict: Verdict, stages: readonly Stage[]): Stage['next'] {
  const asked = stages.filter((stage) => stage.verdict === verdict && stage.next !== null);
  const by = (stage: Stage): number => stage.next?.by ?? Number.POSITIVE_INFINITY;
  return (
    asked.reduce<Stage | null>(
      (least, stage) => (least === null || by(stage) < by(least) ? stage : least),
      null,
    )?.next ?? null
  );
}

/** One stage of the step from the same stage of each of its pieces (docs/judge.md, section 2, Places). */
function combined(name: StageName, stages: readonly Stage[], asOf: number): Stage {
  const [only] = stages;
  if (only !== undefined && stages.length === 1) return { ...only };
  const verdict = worstVerdict(stages);
  const deadline = earliest(stages.map((stage) => stage.deadline));
  const worst: Stage = {
    verdict,
    open: isOpen(verdict, stages),
    section: only?.section ?? '',
    limit: only?.limit ?? null,
    limit_min: only?.limit_min ?? null,
    longest_min: greatestOrUnknown(stages.map((stage) => stage.longest_min)),
    shortest_min: greatest(stages.map((stage) => stage.shortest_min)),
    deadline,
    remaining_min: deadline === null ? null : minutesBetween(asOf, deadline),
    reasons: sorted(stages.flatMap((stage) => stage.reasons)),
    next: nextOf(verdict, stages),
    rests_on: stages
      .filter((stage) => stage.verdict === verdict)
      .flatMap((stage) => stage.rests_on)
      .sort((a, b) => a - b),
  };
  if (name !== 'at_readings' && name !== 'between_readings') return worst;
  if (stages.some((stage) => stage.first_bad !== undefined)) {
    worst.first_bad = earliest(stages.map((stage) => stage.first_bad));
    worst.below_longest_min = greatest(stages.map((stage) => stage.below_longest_min));
    worst.below_shortest_min = greatest(stages.map((stage) => stage.below_shortest_min));
  }
  if (stages.some((stage) => stage.longest_gap_min !== undefined))
    worst.longest_gap_min = greatest(stages.map((stage) => stage.longest_gap_min));
  return worst;
}

/** How many pieces were read: the numbered ones, or 1 for the batch where no numbered piece was read. */
function piecesRead(read: readonly (number | null)[]): number {
  const numbered = read.filter((piece) => piece !== null).length;
  return numbered > 0 ? numbered : Math.min(read.length, 1);
}

/** The stages of the step: worst over its pieces, with how many of them were read. */
export function combine(judged: Judged, record: StepRecord): Stages {
  const stages: Stages = { ...judged.whole };
  const names = new Set(judged.byPiece.flatMap((piece) => stageEntries(piece.stages).map(([name]) => name)));
  for (const name of names) {
    const each = judged.byPiece.flatMap((piece) => piece.stages[name] ?? []);
    stages[name] = combined(name, each, record.asOf);
  }
  const { pieces } = record.food;
  if (pieces === null) return stages;
  const read = piecesRead(judged.read);
  for (const [name, stage] of stageEntries(stages)) {
    if (notByPiece.has(name) || stage.verdict === 'not_applicable') continue;
    stages[name] = {
      ...stage,
      pieces_read: read,
      reasons: read < pieces ? sorted([...stage.reasons, 'some_pieces_unread']) : stage.reasons,
    };
  }
  return stages;
}
