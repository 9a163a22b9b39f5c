import type { Profile } from '#lib/limits/profile.ts';
import { type FoodClass, foodClass } from '#shared/entries/food.ts';
import { msOf } from '#shared/time.ts';
import type { Reason, Stage, StageName, Stages } from './answer.ts';
import type { DaysProof } from './explain-days.ts';
import { kindOf } from './hold-kind.ts';
import { judgeStep } from './judge.ts';
import { logDays } from './log-days.ts';
import { type LogProblem, type LogRow, type LogStep, readLog } from './log-rows.ts';
import type { Facts, JudgedReading, RuleKind, StepRecord } from './record.ts';
import { stageEntries } from './stage.ts';

/** How a log is to be judged. `asOf` null = the log's last reading; nothing reads a clock. */
export type LogQuestion = {
  profile: Profile;
  planIntervalMin: number | null;
  asOf: string | null; // ISO 8601 with an offset
  ended: boolean; // each batch's last step ended with its last reading
};

/** One step of a batch: its stages, or none and why. */
export type LogStepAnswer = {
  step: LogStep;
  stages: Stages;
  reason: Reason | null; // beside empty stages
  start: LogRow; // its first reading
  last: LogRow; // its last reading that is seen
  end: number | null; // as far as is seen
  /** What the judge was asked, for a proof; `lines`: the log's line of each reading. Null without a rule. */
  asked: { kind: RuleKind; record: StepRecord; lines: number[] } | null;
  /** Of food held cold, where the log shows a first day: what its date mark was counted from. */
  days: DaysProof | null;
};
/** `classed` false: the food is of no class that the rules name, and is judged by the strictest that could apply. */
export type LogBatch = { batch: string; food: string; classed: boolean; steps: LogStepAnswer[] };
export type LogAnswer = { batches: LogBatch[]; problems: LogProblem[]; asOf: number | null };

type Run = { step: LogStep; rows: LogRow[]; end: number | null; goneAt: number | null };

/** The rows of one moment: those that go on with the step before first, those of the step after last. */
function momentInOrder(rows: readonly LogRow[], before: LogStep | null, after: LogStep | null): LogRow[] {
  const place = ({ step }: LogRow): number => (step === before ? 0 : step === after ? 2 : 1);
  return [...rows].sort((a, b) => place(a) - place(b) || (a.step < b.step ? -1 : a.step > b.step ? 1 : 0));
}

/** The batch's rows by time. Rows of one moment are put so that the order of the lines makes no steps of its own. */
function byTime(rows: readonly LogRow[]): LogRow[] {
  const sorted = [...rows].sort((a, b) => a.at - b.at || a.line - b.line);
  const ordered: LogRow[] = [];
  for (let from = 0; from < sorted.length; ) {
    const at = sorted[from]?.at;
    let past = from;
    while (sorted[past]?.at === at && past < sorted.length) past++;
    const before = ordered.at(-1)?.step ?? null;
    ordered.push(...momentInOrder(sorted.slice(from, past), before, sorted[past]?.step ?? null));
    from = past;
  }
  return ordered;
}

/** The consecutive runs of one step; one that another follows ends at that one's first reading. */
function runsOf(rows: readonly LogRow[], ended: boolean): Run[] {
  const runs: Run[] = [];
  for (const row of byTime(rows)) {
    const run = runs.at(-1);
    if (run?.step === row.step) run.rows.push(row);
    else {
      if (run !== undefined) run.end = row.at;
      runs.push({ step: row.step, rows: [row], end: null, goneAt: null });
    }
  }
  const last = runs.at(-1);
  if (ended && last !== undefined) {
    last.end = last.rows.at(-1)?.at ?? null;
    last.goneAt = last.end;
  }
  return runs;
}

/** Every row is a hand reading of a thermometer of which nothing else is known. */
const reading = (row: LogRow): JudgedReading => ({
  at: row.at,
  value: row.value,
  unit: row.unit,
  spot: row.spot,
  piece: row.piece,
  probe: row.probe,
  held_s: row.heldS,
  source: 'hand',
  suspect: false,
  correction: null,
});

/** Food readings of the batch so far, by piece, in order of time. */
type Past = Map<number | null, LogRow[]>;

const isFood = ({ spot }: LogRow): boolean => spot !== 'air';

function keep(past: Past, rows: readonly LogRow[]): void {
  for (const row of rows.filter(isFood)) {
    const known = past.get(row.piece);
    if (known === undefined) past.set(row.piece, [row]);
    else known.push(row);
  }
}

/** A piece's last food readings before a moment: all those of that one moment. */
function lastBefore(rows: readonly LogRow[], at: number): LogRow[] {
  let past = rows.length;
  while ((rows[past - 1]?.at ?? Number.NEGATIVE_INFINITY) >= at) past--;
  let from = past;
  while (from > 0 && rows[from - 1]?.at === rows[past - 1]?.at) from--;
  return rows.slice(from, past);
}

/** What a cooling or reheat sees of the time before it: of the pieces read in it, or of all when none was. */
function seenBefore(past: Past, run: Run, at: number): LogRow[] {
  const read = new Set(run.rows.filter(isFood).map(({ piece }) => piece));
  const pieces = read.size > 0 ? [...read] : [...past.keys()];
  return pieces.flatMap((piece) => lastBefore(past.get(piece) ?? [], at));
}

type Batch = { food: string; past: Past; earlier: Run[] };

/**
 * What a log's step says of itself: nothing of a cook, so the roast allowance is never taken from it, and of time
 * control when the food left (the step's first reading) and, where the log ended with it, when it was gone.
 */
const factsOf = (run: Run): Facts =>
  run.step === 'time_control' ? { removed_at: run.rows[0]?.at ?? null, gone_at: run.goneAt } : {};

function answerStep(
  run: Run,
  { food, past, earlier }: Batch,
  asOf: number,
  ask: LogQuestion,
): LogStepAnswer[] {
  const [start] = run.rows;
  if (start === undefined || start.at > asOf) return []; // not seen yet
  const end = run.end !== null && run.end <= asOf ? run.end : null;
  const last = run.rows.findLast((row) => row.at <= asOf) ?? start;
  const answer = { step: run.step, start, last, end, asked: null, days: null };
  const kind = kindOf(
    run.step,
    earlier.map(({ step }) => step),
  );
  if (kind === null) return [{ ...answer, stages: {}, reason: 'preparation' }];
  const looksBack = kind === 'cooling' || kind === 'reheat' || kind === 'cook' || kind === 'time_control';
  const before = looksBack ? seenBefore(past, run, start.at) : [];
  const rows = [...before, ...run.rows];
  const record: StepRecord = {
    food: { class: classOf(food), pieces: null },
    facts: factsOf(run),
    planIntervalMin: ask.planIntervalMin,
    start: start.at,
    end: run.end,
    asOf,
    readings: rows.map(reading),
  };
  const stages = judgeStep(kind, record, ask.profile);
  // A log's readings are known by their lines.
  for (const [, stage] of stageEntries(stages))
    stage.rests_on = stage.rests_on.map((index) => rows[index]?.line ?? 0).sort((a, b) => a - b);
  const dated =
    kind === 'cold_hold'
      ? logDays([...earlier, run], { food: classOf(food), asOf, profile: ask.profile })
      : null;
  if (dated !== null) stages.date_mark = dated.stage;
  const empty = stageEntries(stages).length === 0;
  const asked = { kind, record, lines: rows.map(({ line }) => line) };
  return [{ ...answer, stages, reason: empty ? 'no_figure' : null, asked, days: dated?.days ?? null }];
}

function grouped(rows: readonly LogRow[]): Map<string, LogRow[]> {
  const batches = new Map<string, LogRow[]>();
  for (const row of rows) {
    const known = batches.get(row.batch);
    if (known === undefined) batches.set(row.batch, [row]);
    else known.push(row);
  }
  return batches;
}

/**
 * Judges a log of readings: text in, verdicts or problems out, and nothing in part. Batches come in the order in
 * which the log names them first, their steps by time.
 */
export function judgeLog(text: string, ask: LogQuestion): LogAnswer {
  const { rows, problems } = readLog(text);
  if (problems.length > 0) return { batches: [], problems, asOf: null };
  const first = rows.reduce((least, { at }) => Math.min(least, at), Number.POSITIVE_INFINITY);
  const last = rows.reduce((most, { at }) => Math.max(most, at), Number.NEGATIVE_INFINITY);
  const asOf = ask.asOf === null ? last : msOf(ask.asOf);
  if (asOf < first) {
    const values = { typed: ask.asOf ?? '' };
    return {
      batches: [],
      problems: [{ line: 0, column: '--as-of', problem: 'before_log', values }],
      asOf: null,
    };
  }
  const batches = [...grouped(rows)].map(([batch, lines]): LogBatch => {
    const food = lines[0]?.food ?? '';
    const past: Past = new Map();
    const earlier: Run[] = [];
    const steps = runsOf(lines, ask.ended).flatMap((run) => {
      const answer = answerStep(run, { food, past, earlier }, asOf, ask);
      keep(past, run.rows);
      earlier.push(run);
      return answer;
    });
    return { batch, food, classed: classOf(food) !== 'unknown', steps };
  });
  return { batches: batches.filter(({ steps }) => steps.length > 0), problems: [], asOf };
}

/** The class that the log names; any other word is food of a class that nobody knows. */
function classOf(food: string): FoodClass {
  const known = foodClass.safeParse(food);
  return known.success ? known.data : 'unknown';
}

/** About witness, not about the rule. */
const counts = (name: StageName): boolean => name !== 'between_readings';

/**
 * The exit status that a judged log ends with: 3 with a problem, else 1 when something is broken, else 2 when
 * something is not shown, still open or without stages, else 0.
 */
export function logStatus({ batches, problems }: LogAnswer): 0 | 1 | 2 | 3 {
  if (problems.length > 0) return 3;
  const steps = batches.flatMap((batch) => batch.steps);
  const stages = steps.flatMap((step): Stage[] =>
    stageEntries(step.stages).flatMap(([name, stage]) => (counts(name) ? [stage] : [])),
  );
  if (stages.some((stage) => stage.verdict === 'broken')) return 1;
  const isUnproven = (stage: Stage): boolean => stage.verdict === 'not_shown' || stage.open;
  return steps.some((step) => stageEntries(step.stages).length === 0) || stages.some(isUnproven) ? 2 : 0;
}
