import { minutesBetween } from '#shared/time.ts';
import type { Stage, StageName, Stages, Verdict } from './answer.ts';
import type { StepRecord } from './record.ts';
import { blankStage, sorted, stageEntries, stageNames } from './stage.ts';

/** The stages of each piece that a rule judged, and those that are not judged by piece. */
export type Judged = {
  byPiece: { piece: number | null; stages: Stages }[];
  /** Stages of the whole step: by facts or by the batch; and every stage, when no piece was read. */
  whole: Stages;
  /** The pieces (null = the batch) with a food reading in the step. */
  read: (number | null)[];
  /**
   * Holding: a kept stage rests on every proving reading. They are kept once, in order, and given to the step or
   * shared out to its pieces when they are asked for.
   */
  proofs?: number[];
  /** Stages that speak of no piece, so that an unread piece takes nothing from them. */
  byFacts?: readonly StageName[];
  /** The pieces that were read for a stage, where a step's stages look at different stretches of the record. */
  readFor?: Partial<Record<StageName, (number | null)[]>>;
  /** The order of the stages; missing = by piece first, then the whole step's. */
  order?: readonly StageName[];
};

/** Each piece's own stages, with the readings that they rest on. */
export function piecesOf({ byPiece, proofs }: Judged, record: StepRecord): Judged['byPiece'] {
  if (proofs === undefined) return byPiece;
  const shares = new Map<number | null, number[]>(byPiece.map(({ piece }) => [piece, []]));
  for (const index of proofs) shares.get(record.readings[index]?.piece ?? null)?.push(index);
  return byPiece.map(({ piece, stages }) => ({
    piece,
    stages: Object.fromEntries(
      stageEntries(stages).map(([name, stage]) => [
        name,
        stage.verdict === 'kept' ? { ...stage, rests_on: shares.get(piece) ?? [] } : stage,
      ]),
    ),
  }));
}

/** What makes a step's verdict: one broken piece breaks it, and one that is not shown leaves it unshown. */
const rank: Record<Verdict, number> = { broken: 3, not_shown: 2, kept: 1, not_applicable: 0 };

type Maybe = number | null | undefined;

const greater = (a: Maybe, b: Maybe): number | null => {
  if (a === null || a === undefined) return b ?? null;
  return b === null || b === undefined || a > b ? a : b;
};

const earlier = (a: Maybe, b: Maybe): number | null => {
  if (a === null || a === undefined) return b ?? null;
  return b === null || b === undefined || a < b ? a : b;
};

/** Of two things to do the one that is due first; one without a moment comes last. */
const sooner = (a: Stage['next'], b: Stage['next']): Stage['next'] => {
  if (a === null || b === null) return a ?? b;
  return (b.by ?? Number.POSITIVE_INFINITY) < (a.by ?? Number.POSITIVE_INFINITY) ? b : a;
};

/** Lengths that only holding has. */
function worstHold(worst: Stage, stage: Stage): void {
  if (stage.first_bad !== undefined) {
    worst.first_bad = earlier(worst.first_bad, stage.first_bad);
    if (stage.below_longest_min !== undefined) {
      worst.below_longest_min = greater(worst.below_longest_min, stage.below_longest_min);
      worst.below_shortest_min = greater(worst.below_shortest_min, stage.below_shortest_min);
    }
    if (stage.above_longest_min !== undefined) {
      worst.above_longest_min = greater(worst.above_longest_min, stage.above_longest_min);
      worst.above_shortest_min = greater(worst.above_shortest_min, stage.above_shortest_min);
    }
    if (stage.defences !== undefined) worst.defences = stage.defences;
  }
  if (stage.longest_gap_min !== undefined)
    worst.longest_gap_min = greater(worst.longest_gap_min, stage.longest_gap_min);
}

/**
 * One stage of the step from the same stage of each of its pieces (docs/judge.md, section 2, Places). Of lengths
 * the worst piece's, an unknown longest being the greatest of all; of deadlines the earliest. A stage that is not
 * shown is open when each of its pieces is kept or open and one is open.
 */
function combined(stages: readonly Stage[], asOf: number): Stage {
  const [first, ...others] = stages;
  const worst: Stage = { ...(first ?? blankStage('')) };
  let noneLost = worst.open || worst.verdict === 'kept';
  let someOpen = worst.open;
  let allOpen = worst.open;
  for (const stage of others) {
    noneLost &&= stage.open || stage.verdict === 'kept';
    someOpen ||= stage.open;
    allOpen &&= stage.open;
    worst.longest_min =
      worst.longest_min === null || stage.longest_min === null
        ? null
        : Math.max(worst.longest_min, stage.longest_min);
    worst.shortest_min = greater(worst.shortest_min, stage.shortest_min);
    worst.deadline = earlier(worst.deadline, stage.deadline);
    if (stage.reasons.length > 0) worst.reasons = [...worst.reasons, ...stage.reasons];
    worstHold(worst, stage);
    const [before, here] = [rank[worst.verdict], rank[stage.verdict]];
    if (here > before) {
      worst.verdict = stage.verdict;
      worst.next = stage.next;
      worst.rests_on = stage.rests_on;
    } else if (here === before) {
      worst.next = sooner(worst.next, stage.next);
      if (stage.rests_on.length > 0) worst.rests_on = [...worst.rests_on, ...stage.rests_on];
    }
  }
  if (others.length === 0) return worst;
  worst.open = worst.verdict === 'kept' ? allOpen : worst.verdict === 'not_shown' && noneLost && someOpen;
  worst.remaining_min = worst.deadline === null ? null : minutesBetween(asOf, worst.deadline);
  worst.reasons = sorted(worst.reasons);
  worst.rests_on.sort((a, b) => a - b);
  return worst;
}

/** How many pieces were read: the numbered ones, or 1 for the batch where no numbered piece was read. */
function piecesRead(read: readonly (number | null)[]): number {
  const numbered = read.filter((piece) => piece !== null).length;
  return numbered > 0 ? numbered : Math.min(read.length, 1);
}

/** The names of the pieces' stages; where stages look at different stretches, not every piece has every stage. */
const namesOf = ({ byPiece, readFor }: Judged): StageName[] =>
  readFor === undefined
    ? stageNames(byPiece[0]?.stages ?? {})
    : [...new Set(byPiece.flatMap(({ stages }) => stageNames(stages)))];

/** The stages of the step: worst over its pieces, with how many of them were read. */
export function combine(judged: Judged, record: StepRecord): Stages {
  const { byPiece, whole, proofs, order } = judged;
  const stages: Stages = {};
  for (const name of namesOf(judged)) {
    const ofPieces: Stage[] = [];
    for (const piece of byPiece) {
      const stage = piece.stages[name];
      if (stage !== undefined) ofPieces.push(stage);
    }
    const stage = combined(ofPieces, record.asOf);
    if (stage.verdict === 'kept' && proofs !== undefined) stage.rests_on = proofs;
    stages[name] = stage;
  }
  Object.assign(stages, whole);
  const { pieces } = record.food;
  if (pieces !== null) notePieces(stages, judged, pieces);
  return order === undefined ? stages : inOrder(stages, order);
}

/** The same stages in the order in which their rule gives them. */
function inOrder(stages: Stages, order: readonly StageName[]): Stages {
  const ordered: Stages = {};
  for (const name of order) {
    const stage = stages[name];
    if (stage !== undefined) ordered[name] = stage;
  }
  return ordered;
}

/**
 * Says how many pieces were read in every stage that is judged by piece; a kept is then said of the pieces read.
 * The stages are this judgement's own, so they are written to: copying them cost as much as combining them.
 */
function notePieces(stages: Stages, { read, readFor, byFacts }: Judged, pieces: number): void {
  for (const name of stageNames(stages)) {
    const stage = stages[name];
    if (stage === undefined || stage.verdict === 'not_applicable' || isByFacts(name, byFacts)) continue;
    const count = piecesRead(readFor?.[name] ?? read);
    if (count < pieces) stage.reasons = sorted([...stage.reasons, 'some_pieces_unread']);
    stage.pieces_read = count;
  }
}

/** The house's own interval, and a text's for writing, are of the whole group in every kind of step. */
const isByFacts = (name: StageName, byFacts: Judged['byFacts']): boolean =>
  name === 'house_plan_interval' ||
  name === 'record_interval' ||
  name === 'hold_length' ||
  name === 'oven' ||
  byFacts?.includes(name) === true;

/** One stage out of several of the same food: the worst verdict with its own numbers, open as the step is. */
export const worstOf = (stages: readonly Stage[], asOf: number): Stage => {
  const worst = combined(stages, asOf);
  const own = stages.find((stage) => stage.verdict === worst.verdict) ?? worst;
  return { ...own, open: worst.open, reasons: worst.reasons, rests_on: worst.rests_on };
};
