import { timeFacts } from '#lib/fold/time-facts.ts';
import type { Reason, Stage, StageName, Verdict } from '#lib/judge/answer.ts';
import { explainStep, type StageProof } from '#lib/judge/explain.ts';
import { figuresOf } from '#lib/judge/explain-figures.ts';
import { kindOf } from '#lib/judge/hold-kind.ts';
import type { Facts, JudgedReading, RuleKind, StepRecord } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { msOf } from '#shared/time.ts';
import type { BatchDoc, CanonicalDay, ReadingDoc, RunDoc, StageDoc } from './day-schema.ts';

/** The proof of a stored verdict, made from the day's own document. */
export type DayProof = {
  kind: RuleKind;
  proof: StageProof; // `stage` is the stored verdict
  /** Some readings of the step are of other days, and not in this document. */
  isPart: boolean;
  /** What the document alone would be judged as, where that differs from what is stored; null = the same. */
  otherwise: Verdict | null;
};

const readingOf = (doc: ReadingDoc): JudgedReading => ({
  at: msOf(doc.at),
  value: doc.value,
  unit: doc.unit,
  spot: doc.spot,
  piece: doc.piece,
  probe: null,
  held_s: doc.held_s,
  source: doc.source,
  suspect: doc.suspect,
  correction: doc.correction,
});

const storedStage = (doc: StageDoc): Stage => ({
  verdict: doc.verdict,
  open: doc.open,
  section: doc.section,
  limit: doc.limit,
  limit_min: doc.limit_min,
  longest_min: doc.longest_min,
  shortest_min: doc.shortest_min,
  deadline: doc.deadline === null ? null : msOf(doc.deadline),
  remaining_min: null,
  reasons: doc.reasons as Reason[],
  next: null,
  rests_on: [],
  first_bad: doc.first_bad === null ? null : msOf(doc.first_bad),
  below_longest_min: doc.below_longest_min,
  below_shortest_min: doc.below_shortest_min,
  longest_gap_min: doc.longest_gap_min,
  ...(doc.last_day === undefined ? {} : { last_day: doc.last_day }),
});

/** What a stored verdict says of the roast's cook: the figure it was held to, or that the allowance is contested. */
function roastCookOf(run: RunDoc, { figures }: Profile): Facts['roast_cook'] {
  const { hot_hold_roast: roast } = figures;
  const held = run.stages.at_readings;
  if (held?.limit && roast && roast.value[held.limit.unit] === held.limit.value) return 'kept';
  const contested = Object.values(run.stages).some(({ reasons }) =>
    reasons.some((reason) => reason === 'allowance_not_shown' || reason === 'disputed'),
  );
  return contested ? 'not_shown' : 'none';
}

/** The route of a reheat: as it was said, else the one whose section the stored verdict names. */
function routeOf(run: RunDoc, { figures }: Profile): Pick<Facts, 'route'> {
  const { route } = run.details;
  if (typeof route === 'string') return { route: route as Facts['route'] };
  const section = run.stages.temperature?.section;
  const isSealed = run.step === 'reheat' && section === figures.reheat_commercial?.target.section;
  return isSealed ? { route: 'commercial' } : {};
}

/** Food at rest, in service or in a box: held cold where the stored verdict is of a figure to stay under. */
function kindOfDoc(run: RunDoc): RuleKind | null {
  const side = run.stages.at_readings?.limit?.comparison;
  return side === 'at_or_below' || side === 'below' ? 'cold_hold' : kindOf(run.step, []);
}

function factsOf(run: RunDoc, profile: Profile): Facts {
  const { details } = run;
  const flag = (value: unknown): boolean | null => (typeof value === 'boolean' ? value : null);
  const number = (value: unknown): number | null => (typeof value === 'number' ? value : null);
  const { ingredients, prepared_at: made } = details;
  return {
    roast_cook: roastCookOf(run, profile),
    covered: flag(details.covered),
    stirred: flag(details.stirred),
    stood_s: number(details.stood_s),
    ...routeOf(run, profile),
    ...(ingredients === 'ambient' || ingredients === 'cooked' ? { ingredients } : {}),
    ...(typeof made === 'string' ? { prepared_at: msOf(made) } : {}),
  };
}

const isOfDay = (day: CanonicalDay, run: RunDoc): boolean =>
  msOf(run.start) >= msOf(day.from) && (run.end === null || msOf(run.end) <= msOf(day.to));

/** The readings of one piece in the document, those before its stay among them. */
function recordOf(
  day: CanonicalDay,
  batch: BatchDoc,
  run: RunDoc,
  piece: number | null,
  profile: Profile,
): StepRecord {
  const member = run.members.find((one) => one.piece === piece) ?? run.members[0];
  const named = new Set([...run.readings, ...run.earlier]);
  const start = member?.from ?? run.start;
  const until = member === undefined ? run.end : member.until;
  const all = [...batch.earlier, ...batch.readings].filter(({ spot }) => spot !== 'air');
  const own = all.filter((reading) => reading.piece === piece);
  const before = (one: ReadingDoc): boolean => msOf(one.at) < msOf(start);
  // Pans that came out of a kettle were last read in it.
  const earlier = own.some(before)
    ? own.filter(before)
    : all.filter((one) => one.piece === null && before(one));
  const last = earlier.reduce((most, { at }) => Math.max(most, msOf(at)), Number.NEGATIVE_INFINITY);
  const readings = [
    ...earlier.filter(({ at }) => msOf(at) === last).map((one) => ({ ...one, piece })),
    ...own.filter(({ id, at }) => named.has(id) && msOf(at) >= msOf(start)),
  ];
  return {
    food: { class: batch.food?.class ?? 'unknown', pieces: null },
    facts: {
      ...factsOf(run, profile),
      ...(run.step === 'time_control'
        ? timeFacts(run.details, msOf(start), until === null ? null : msOf(until), profile)
        : {}),
    },
    planIntervalMin: null,
    start: msOf(start),
    end: until === null || msOf(until) > msOf(day.as_of) ? null : msOf(until),
    asOf: msOf(day.as_of),
    readings: readings.map(readingOf),
  };
}

const worstFirst: readonly Verdict[] = ['broken', 'not_shown', 'kept', 'not_applicable'];

/**
 * How one stored verdict was reached, from the day's document and the limits by which it was judged. The stored
 * verdict stands: where the document alone would be judged otherwise, that is said beside it. Null without a rule.
 */
export function explainDay(
  day: CanonicalDay,
  batch: BatchDoc,
  run: RunDoc,
  name: string,
  profile: Profile,
): DayProof | null {
  const doc = run.stages[name];
  const kind = kindOfDoc(run);
  if (doc === undefined || kind === null) return null;
  const every = run.by_piece.flatMap(({ piece, stages }) => {
    const stored = stages[name];
    if (stored === undefined) return [];
    const record = recordOf(day, batch, run, piece, profile);
    const proof = explainStep(kind, record, profile).stages.find((stage) => stage.name === name);
    if (proof === undefined) return [];
    const pieces = proof.pieces.map((one) => ({ ...one, verdict: stored.verdict }));
    const read = record.readings.some(({ at }) => record.start !== null && at >= record.start);
    return [{ proof, pieces, judged: proof.stage.verdict, read, record }];
  });
  // The run's verdict is of the pieces that were read; of all of them only when none was.
  const read = every.filter((one) => one.read);
  const own = read.length > 0 ? read : every;
  const [first] = own;
  const stage = storedStage(doc);
  const judged = worstFirst.find((verdict) => own.some((one) => one.judged === verdict)) ?? doc.verdict;
  const doubted = own.filter(({ proof }) => proof.without_suspect !== null);
  const without = own.map(({ proof }) => proof.without_suspect ?? proof.stage.verdict);
  // A length that is stored and cannot be found again rests on a reading that is not in the document.
  const known = new Set([...batch.readings, ...batch.earlier].map(({ id }) => id));
  const lacks =
    doc.rests_on.some((id) => !known.has(id)) ||
    (doc.longest_min !== null && own.some(({ proof }) => proof.stage.longest_min === null));
  // Counted in calendar days: no reading decides it, and none of another day is missing.
  const isDated = name === 'date_mark';
  const shownFor = first?.record ?? recordOf(day, batch, run, null, profile);
  const isPart = !isDated && (!isOfDay(day, run) || lacks);
  const isByFacts = name === 'oven' || name === 'house_plan_interval' || isDated;
  return {
    kind,
    proof: {
      name: name as StageName,
      stage,
      figures:
        first === undefined && !isDated ? [] : figuresOf(kind, name as StageName, shownFor, profile, stage),
      pieces: own.flatMap(({ pieces }) => pieces),
      air: 0,
      without_suspect:
        doubted.length === 0 ? null : (worstFirst.find((verdict) => without.includes(verdict)) ?? null),
    },
    isPart,
    otherwise: isByFacts || isPart || judged === doc.verdict ? null : judged,
  };
}
