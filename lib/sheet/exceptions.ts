import { piecesOf } from './day-batches.ts';
import type {
  BatchDoc,
  CanonicalDay,
  DeviationDoc,
  LineDoc,
  RoundDoc,
  RunDoc,
  StageDoc,
} from './day-schema.ts';

/**
 * What was not as it should be, worst first: read off the canonical day and from nothing else. Each has a number
 * (its tag on the lines) and, while it is open, a reference under which the signer says what was decided.
 */
type Head = { tag: number; ref: string; open: boolean; deviations: DeviationDoc[] };

export type Exception = Head &
  (
    | {
        kind: 'broken';
        batch: BatchDoc;
        run: RunDoc;
        stage: string;
        judged: StageDoc;
        pieces: number[] | null;
      }
    | { kind: 'deviation'; batch: BatchDoc | null; run: RunDoc | null; pieces: number[] | null }
    | { kind: 'thermometer'; thermometer: CanonicalDay['thermometers'][number] }
    | { kind: 'round_missed'; round: RoundDoc; gaps: Gap[] }
    | { kind: 'interval'; gaps: Gap[] }
    | { kind: 'power_cut'; cut: CanonicalDay['power_cuts'][number] }
  );

/** A group of food at which nobody looked for longer than the house plan allows. */
export type Gap = { batch: BatchDoc; run: RunDoc; judged: StageDoc; from: string | null; to: string | null };

type Draft = Exception extends infer E ? (E extends Exception ? Omit<E, 'tag'> : never) : never;

/** Stages that speak of the house's own plan, or repeat between the looks what was found at them. */
const notPublished = new Set(['house_plan_interval', 'between_readings']);

export function exceptionsOf(day: CanonicalDay): Exception[] {
  const broken = brokenStages(day);
  const told = new Set(broken.flatMap((one) => one.deviations.map((deviation) => deviation.ref)));
  const drafts: Draft[] = [
    ...broken,
    ...untold(day, told),
    ...thermometers(day),
    ...gapsByRound(day),
    ...day.power_cuts.map(
      (cut): Draft => ({
        kind: 'power_cut',
        cut,
        ref: `power/${cut.equipment}/${cut.off_at}`,
        open: false,
        deviations: [],
      }),
    ),
  ];
  const [ours, carried] = [
    drafts.filter((one) => !isCarried(day, one)),
    drafts.filter((one) => isCarried(day, one)),
  ];
  return [...ours, ...carried].map((draft, at) => ({ ...draft, tag: at + 1 }));
}

/** Found before the day began: told on the sheet before, and here because it is not done with. */
const isCarried = (day: CanonicalDay, one: Pick<Head, 'deviations'>): boolean =>
  one.deviations.length > 0 &&
  one.deviations.every((deviation) => Date.parse(deviation.found_at) < Date.parse(day.from));

/** Every reference under which a decision on this exception may stand. */
export const refsOf = (one: Exception): string[] => [
  one.ref,
  ...one.deviations.map((deviation) => deviation.ref),
  ...('round' in one ? [one.round.id, one.round.round] : []),
  ...('gaps' in one ? one.gaps.map(gapRef) : []),
];

/** What the signer must decide on before signing. */
export const openItems = (day: CanonicalDay): Exception[] => exceptionsOf(day).filter((one) => one.open);

const isOpen = (deviations: readonly DeviationDoc[]): boolean =>
  deviations.length === 0 || deviations.some((one) => one.state !== 'closed' || one.unconfirmed.length > 0);

const runsOf = (day: CanonicalDay): { batch: BatchDoc; run: RunDoc }[] =>
  day.batches.flatMap((batch) => batch.runs.map((run) => ({ batch, run })));

function brokenStages(day: CanonicalDay): Extract<Draft, { kind: 'broken' }>[] {
  const found = runsOf(day).flatMap(({ batch, run }) =>
    Object.entries(run.stages)
      .filter(([name, stage]) => stage.verdict === 'broken' && !notPublished.has(name))
      .map(([stage, judged]) => {
        const pieces = piecesOf(run, stage, 'broken') ?? run.pieces;
        const deviations = deviationsOf(day, batch, run, pieces, stage);
        const ref = deviations[0]?.ref ?? `${run.id}/${stage}`;
        return {
          kind: 'broken' as const,
          batch,
          run,
          stage,
          judged,
          pieces,
          deviations,
          ref,
          open: isOpen(deviations),
        };
      }),
  );
  return found.sort((a, b) => worst(b.judged) - worst(a.judged) || (a.run.start < b.run.start ? -1 : 1));
}

/** How long out of control at most; unknown is the longest of all. */
const worst = (stage: StageDoc): number => stage.below_longest_min ?? stage.longest_min ?? Number.MAX_VALUE;

function deviationsOf(
  day: CanonicalDay,
  batch: BatchDoc,
  run: RunDoc,
  pieces: number[] | null,
  stage: string,
): DeviationDoc[] {
  return day.deviations.filter((deviation) => {
    if (deviation.opened === 'by_the_judge') {
      return deviation.run === run.id && deviation.stage === stage;
    }
    return deviation.batch === batch.id && deviation.step === run.step && meet(deviation.pieces, pieces);
  });
}

const meet = (a: readonly number[] | null, b: readonly number[] | null): boolean =>
  a === null || b === null || a.some((piece) => b.includes(piece));

/** Deviations that no broken rule tells of: opened by hand, or about something else than food. */
function untold(day: CanonicalDay, told: ReadonlySet<string>): Draft[] {
  return day.deviations
    .filter((deviation) => !told.has(deviation.ref) && deviation.thermometer === null)
    .map((deviation): Draft => {
      const batch = day.batches.find((one) => one.id === deviation.batch) ?? null;
      const run =
        batch?.runs.find((one) => one.id === deviation.run) ??
        batch?.runs.find((one) => one.step === deviation.step && meet(one.pieces, deviation.pieces)) ??
        null;
      return {
        kind: 'deviation',
        batch,
        run,
        pieces: deviation.pieces,
        deviations: [deviation],
        ref: deviation.ref,
        open: isOpen([deviation]),
      };
    });
}

function thermometers(day: CanonicalDay): Draft[] {
  return day.thermometers
    .filter((one) => one.suspect.length > 0 || one.checks.some((check) => check.verdict === 'broken'))
    .map((thermometer): Draft => {
      const deviations = day.deviations.filter((one) => one.thermometer === thermometer.id);
      const ref = deviations[0]?.ref ?? `thermometer/${thermometer.id}`;
      return { kind: 'thermometer', thermometer, deviations, ref, open: isOpen(deviations) };
    });
}

/** Missed rounds with the gaps that they left, then the gaps that no missed round explains. */
function gapsByRound(day: CanonicalDay): Draft[] {
  const gaps = runsOf(day).flatMap(({ batch, run }) => {
    const judged = run.stages.house_plan_interval;
    if (judged?.verdict !== 'broken') return [];
    return [{ batch, run, judged, ...longestGap(run.line) }];
  });
  const missed = day.rounds.filter((round) => round.status === 'missed');
  const taken = new Set<Gap>();
  const rounds = missed.map((round): Draft => {
    const at = Date.parse(round.planned_at ?? round.at);
    const mine = gaps.filter(
      (gap) =>
        !taken.has(gap) &&
        gap.from !== null &&
        gap.to !== null &&
        Date.parse(gap.from) <= at &&
        at <= Date.parse(gap.to),
    );
    for (const gap of mine) taken.add(gap);
    return {
      kind: 'round_missed',
      round,
      gaps: mine,
      deviations: [],
      ref: `round/${round.round}`,
      open: true,
    };
  });
  const left = gaps.filter((gap) => !taken.has(gap));
  return [
    ...rounds,
    ...together(left).map(
      (gaps): Draft => ({ kind: 'interval', gaps, deviations: [], ref: gapRef(gaps[0]), open: true }),
    ),
  ];
}

const gapRef = (gap: Gap | undefined): string => `${gap?.run.id ?? ''}/house_plan_interval`;

/** Gaps that overlap have one cause as a rule, and are answered for once. */
function together(gaps: readonly Gap[]): Gap[][] {
  const at = (text: string | null): number => (text === null ? Number.NaN : Date.parse(text));
  const inOrder = [...gaps].sort(
    (a, b) => (at(a.from) || 0) - (at(b.from) || 0) || (a.run.id < b.run.id ? -1 : 1),
  );
  const groups: { gaps: Gap[]; until: number }[] = [];
  for (const gap of inOrder) {
    const last = groups.at(-1);
    if (last && at(gap.from) <= last.until) {
      last.gaps.push(gap);
      last.until = Math.max(last.until, at(gap.to));
    } else groups.push({ gaps: [gap], until: at(gap.to) });
  }
  return groups.map((group) => group.gaps);
}

function longestGap(line: LineDoc | null): { from: string | null; to: string | null } {
  const length = (one: { from: string; to: string }): number => Date.parse(one.to) - Date.parse(one.from);
  const longest = (line?.stretches ?? [])
    .filter((stretch) => stretch.kind === 'nobody_looked')
    .sort((a, b) => length(b) - length(a))[0];
  return { from: longest?.from ?? null, to: longest?.to ?? null };
}
