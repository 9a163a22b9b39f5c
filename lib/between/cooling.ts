import { stagesOf } from '#lib/fold/ask.ts';
import type { Book, JudgedRun } from '#lib/fold/book.ts';
import type { Stage, StageName } from '#lib/judge/answer.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import { coolingOf } from '#lib/science/conduction.ts';
import { type Rate, requiredRate, twoReadingRate } from '#lib/science/cooling-rate.ts';
import { ASSUMED, outlookBy, posterior } from '#lib/science/forecast.ts';
import { bisect } from '#lib/science/root.ts';
import { type AirRound, airRound } from './air.ts';
import { assumed, metresPerInch } from './assumed.ts';
import { byPlainCurve, mayUsePlainCurve } from './plain-curve.ts';
import { hour, inF, type Reading } from './readings.ts';
import { type CoolingSeries, coolingSeries } from './series.ts';

/** Where a forecast stands against its deadline. There is no word for one that will do: a forecast only warns. */
export type Standing =
  | 'nothing_to_warn_of'
  | 'may_miss'
  | 'probably_misses'
  | 'past'
  | 'no_deadline'
  | 'unknown';

/** Instants (ms) between which the inside is expected at the figure; `latest` null: no end is known. */
export type Expected =
  | {
      say: 'range';
      earliest: number;
      middle: number | null;
      latest: number | null;
      by: 'readings' | 'depth' | 'plain_curve';
    }
  | { say: 'air_may_not_get_there' | 'does_not_fit' | 'too_few_readings' | 'air_unknown' };

export type CoolingTarget = {
  stage: StageName;
  section: string;
  /** °F, and as the rule prints it. */
  to: number;
  limit: NonNullable<Stage['limit']>;
  limitMin: number | null;
  deadline: number | null;
  expected: Expected;
  standing: Standing;
};

export type CoolingOutlook = {
  piece: number | null;
  readings: Reading[];
  /** Since when nothing was moved. */
  since: number;
  air: AirRound | null;
  depthIn: number | null;
  targets: CoolingTarget[];
  /** From the last two readings [log10/h], and what both stages ask in this air. */
  rate: Rate | null;
  required: number | null;
  /** χ² of the fit, for who wants to see it; null with fewer than two readings. */
  chi2: number | null;
  ways: Way[];
  next: { at: number; why: NextRead } | null;
};

/** A way to cool faster. `lastStart`: begun later it probably does not help; null: probably too late for it now. */
export type Way = {
  way: 'shallow_ice' | 'shallower' | 'ice_bath' | 'blast_chiller';
  target: StageName;
  lastStart: number | null;
  hours: number;
};
export type NextRead = 'learn_the_rate' | 'before_it_is_too_late' | 'at_the_figure' | 'read_once';

/**
 * What the record of a cooling lets one expect, and what can still be done by when. Null: the run does not cool, is
 * over, or no open stage has a figure to reach. Every time is class W: it may only warn.
 */
export function coolingOutlook(book: Book, run: JudgedRun): CoolingOutlook | null {
  if (run.step !== 'cooling' || run.end !== null) return null;
  const series = coolingSeries(book, run);
  const stages = stagesOf(run, series.piece);
  const open = stageEntries(stages).filter(([, stage]) => stage.open && stage.limit !== null);
  if (open.length === 0) return null;
  const air = airRound(book, run);
  const depthIn = run.details.pan_depth_in ?? null;
  const { readings } = series;
  const bare = open.flatMap(([stage, judged]) =>
    judged.limit === null
      ? []
      : [
          {
            stage,
            section: judged.section,
            to: inF(judged.limit),
            limit: judged.limit,
            limitMin: judged.limit_min,
            deadline: judged.deadline,
          },
        ],
  );
  const expected = expectedOf(
    series,
    air,
    bare.map(({ to }) => to),
    surfaceOf(book, run),
    depthIn,
  );
  const targets = bare.map((target, i): CoolingTarget => {
    const each = expected.times[i] ?? { say: 'too_few_readings' as const };
    return { ...target, expected: each, standing: standingOf(each, target.deadline, book.asOf) };
  });
  const [a, b] = readings.slice(-2);
  const rate =
    a === undefined || b === undefined || air === null
      ? null
      : twoReadingRate(a.value, b.value, air.value, (b.at - a.at) / hour);
  const ways = waysOf(book.asOf, readings, air, targets, depthIn);
  return {
    piece: series.piece,
    readings,
    since: series.since,
    air,
    depthIn,
    targets,
    rate,
    required: air === null ? null : (requiredRate(air.value)?.required ?? null),
    chi2: expected.chi2,
    ways,
    next: nextRead(book.asOf, readings, targets, ways),
  };
}

type Surface = readonly [slow: number, quick: number];

function surfaceOf(book: Book, run: JudgedRun): Surface {
  const kind = run.equipment === null ? undefined : book.kitchen.equipment.get(run.equipment)?.kind;
  if (kind === 'ice_bath' || kind === 'blast_chiller') return assumed.surface[kind];
  const { covered } = run.details;
  if (covered === false) return assumed.surface.uncovered;
  if (covered === true) return assumed.surface.lid;
  return covered === undefined
    ? [assumed.surface.lid[0], assumed.surface.uncovered[1]]
    : assumed.surface.loosely;
}

/** Two and more readings: the posterior (M2), and where they do not fit it a plain curve (M1) if that may be asked. One: what depth, cover and air let one expect of a slab. */
function expectedOf(
  { readings, since }: CoolingSeries,
  air: AirRound | null,
  targets: readonly number[],
  surface: Surface,
  depthIn: number | null,
): { times: Expected[]; chi2: number | null } {
  const [first] = readings;
  if (air === null) return { times: targets.map(() => ({ say: 'air_unknown' })), chi2: null };
  if (first === undefined) return { times: targets.map(() => ({ say: 'too_few_readings' })), chi2: null };
  if (readings.length === 1)
    return { times: targets.map((to) => byDepth(first, air.value, to, surface, depthIn)), chi2: null };
  const given = {
    t: readings.map(({ at }) => (at - first.at) / hour),
    y: readings.map(({ value }) => value),
  };
  const known = { air: air.value, ...ASSUMED };
  const at = (hours: number | null): number | null => (hours === null ? null : first.at + hours * hour);
  const found = posterior(given, known, targets);
  const chi2 = found?.chi2 ?? null;
  const plain =
    found?.fits === false &&
    mayUsePlainCurve(
      readings.map((reading) => (reading.at - since) / hour),
      air,
      depthIn,
    )
      ? byPlainCurve(given, air.value, targets)
      : null;
  const times = outlookBy(found, given, known, targets).map((one, i): Expected => {
    const curve = plain?.[i] ?? null;
    const range = one.say === 'range' ? one : one.say === 'does_not_fit' ? curve : null;
    if (range === null) return one.say === 'range' ? { say: 'does_not_fit' } : one;
    return {
      say: 'range',
      earliest: first.at + range.earliest * hour,
      middle: at(range.middle),
      latest: at(range.latest),
      by: one.say === 'range' ? 'readings' : 'plain_curve',
    };
  });
  return { chi2, times };
}

/** A slab cooled from both faces, quick and slow, each stretched by what such sums are good to. */
function byDepth(
  { at, value }: Reading,
  air: number,
  to: number,
  [slow, quick]: Surface,
  depthIn: number | null,
): Expected {
  if (depthIn === null) return { say: 'too_few_readings' };
  if (to <= air) return { say: 'air_may_not_get_there' };
  const soonest = slabHours(value, air, to, depthIn, quick);
  const latest = slabHours(value, air, to, depthIn, slow);
  if (soonest === null) return { say: 'too_few_readings' };
  const middle = latest === null ? null : at + Math.sqrt(soonest * latest) * hour;
  return {
    say: 'range',
    earliest: at + soonest * (1 - assumed.spread) * hour,
    middle,
    latest: latest === null ? null : at + latest * (1 + assumed.spread) * hour,
    by: 'depth',
  };
}

const mostHours = 200;

/** Hours until the middle of a pan `depthIn` deep is at `to`; null: out of range, or never. Class W. */
export function slabHours(from: number, air: number, to: number, depthIn: number, h: number): number | null {
  const slab = coolingOf(
    { kind: 'slab', halfThickness: (depthIn * metresPerInch) / 2 },
    { h, ...assumed.material },
  );
  return slab === null ? null : hoursTo(slab.theta, from, air, to);
}

function hoursTo(
  theta: (hours: number) => number | null,
  from: number,
  air: number,
  to: number,
): number | null {
  if (from <= to) return 0;
  if (to <= air) return null;
  const gap = (hours: number): number => (theta(hours) ?? 1) - (to - air) / (from - air);
  return gap(mostHours) > 0 ? null : bisect(gap, 0, mostHours, 40);
}

function standingOf(expected: Expected, deadline: number | null, now: number): Standing {
  if (deadline === null) return 'no_deadline';
  if (deadline < now) return 'past';
  if (expected.say === 'air_may_not_get_there') return 'probably_misses';
  if (expected.say !== 'range') return 'unknown';
  if (expected.middle === null || expected.middle > deadline) return 'probably_misses';
  return expected.latest === null || expected.latest > deadline ? 'may_miss' : 'nothing_to_warn_of';
}

/** The first figure ahead: what is done now is done for it. */
const ahead = (targets: readonly CoolingTarget[], now: number): CoolingTarget | undefined =>
  targets
    .filter(({ deadline }) => deadline !== null && deadline >= now)
    .sort((a, b) => (a.deadline ?? 0) - (b.deadline ?? 0))[0];

/**
 * The inside on its slow way, °F: from the last reading toward the air so that it is at the figure at the latest
 * instant that is expected; without such an instant it stays where it was read.
 */
function slowWay(last: Reading, air: number, to: number, latest: number | null): (at: number) => number {
  if (latest === null || latest <= last.at || last.value <= to) return () => last.value;
  const left = (to - air) / (last.value - air);
  return (at) => air + (last.value - air) * left ** Math.max(0, (at - last.at) / (latest - last.at));
}

const middle = ([slow, quick]: Surface): number => Math.sqrt(slow * quick);

/** Both at once is the quickest, and the last that helps. */
const ways: readonly { way: Way['way']; h: number; air: number | null }[] = [
  { way: 'shallow_ice', h: middle(assumed.surface.ice_bath), air: assumed.iceWater },
  { way: 'shallower', h: middle(assumed.surface.uncovered), air: null },
  { way: 'ice_bath', h: middle(assumed.surface.ice_bath), air: assumed.iceWater },
  { way: 'blast_chiller', h: middle(assumed.surface.blast_chiller), air: assumed.chillerAir },
];

/** For each way the last instant at which it still helps: begun then it ends at the deadline by the middle figures. */
function waysOf(
  now: number,
  readings: readonly Reading[],
  air: AirRound | null,
  targets: readonly CoolingTarget[],
  depthIn: number | null,
): Way[] {
  const target = ahead(targets, now);
  const last = readings.at(-1);
  if (target === undefined || last === undefined || air === null || depthIn === null) return [];
  const deadline = target.deadline ?? now;
  const latest = target.expected.say === 'range' ? target.expected.latest : null;
  const along = slowWay(last, air.value, target.to, latest);
  return ways.flatMap(({ way, h, air: cold }): Way[] => {
    const depth =
      way === 'shallower' || way === 'shallow_ice' ? Math.min(assumed.shallowIn, depthIn / 2) : depthIn;
    const there = cold === null ? air.value : Math.min(cold, air.value);
    const slab = coolingOf(
      { kind: 'slab', halfThickness: (depth * metresPerInch) / 2 },
      { h, ...assumed.material },
    );
    if (slab === null) return [];
    const need = (at: number): number =>
      (hoursTo(slab.theta, along(at), there, target.to) ?? mostHours) * hour;
    const hours = need(now) / hour;
    const over = (at: number): number => at + need(at) - deadline;
    if (over(now) > 0) return [{ way, target: target.stage, lastStart: null, hours }];
    return [{ way, target: target.stage, lastStart: Math.floor(bisect(over, now, deadline, 24)), hours }];
  });
}

const early = 30 * 60_000;
const ahead10 = 10 * 60_000;

/**
 * When the next reading says most: half an hour after the first, for two readings give the rate while all ways are
 * open; then ten minutes before the last way closes, or when the inside should be at the figure, whichever is first.
 */
function nextRead(
  now: number,
  readings: readonly Reading[],
  targets: readonly CoolingTarget[],
  open: readonly Way[],
): CoolingOutlook['next'] {
  const [first] = readings;
  if (first === undefined) return { at: now, why: 'read_once' };
  if (readings.length === 1) return { at: Math.max(now, first.at + early), why: 'learn_the_rate' };
  const target = ahead(targets, now);
  if (target === undefined) return null;
  const starts = open.flatMap(({ lastStart }) => (lastStart === null ? [] : [lastStart - ahead10]));
  const closing = starts.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...starts);
  const middle =
    target.expected.say === 'range' && target.expected.middle !== null
      ? target.expected.middle
      : (target.deadline ?? now);
  const at = Math.min(closing, middle, target.deadline ?? middle);
  return { at: Math.max(now, at), why: closing <= middle ? 'before_it_is_too_late' : 'at_the_figure' };
}
