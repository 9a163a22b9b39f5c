import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { twoReadingForecast, twoReadingRate } from '#lib/science/cooling-rate.ts';
import { INTO_CABINET, restBrickCore, restTo160 } from '#lib/science/rest.ts';
import { converted } from '#shared/units.ts';
import { assumed } from './assumed.ts';
import { hour, type Reading, readingsOf } from './readings.ts';
import { sidesOf } from './size.ts';

/**
 * When a resting core is at the 160 °F at which it goes into the cabinet (common practice). From two readings where
 * there are two, else from the size of the piece and what it left the heat at. The core is the last place to cool:
 * nothing here speaks of the thin end. Class W.
 */
export type RestPlan = {
  readings: Reading[];
  air: { value: number; within: number; basis: 'read' | 'assumed' };
  target: number;
  /** Size in m, where it was written. */
  sides: number[] | null;
  from: { value: number; at: number; basis: 'read' | 'common_practice' };
} & (
  | {
      by: 'readings';
      middle: number | null;
      earliest: number | null;
      latest: number | null;
      rate: number | null;
    }
  | { by: 'size'; middle: null; earliest: number; latest: number | null; rate: null }
  | { by: 'nothing'; middle: null; earliest: null; latest: null; rate: null }
);

/** Null: the run does not rest. */
export function restPlan(book: Book, run: JudgedRun): RestPlan | null {
  if (run.step !== 'rest' || run.end !== null) return null;
  const core = run.looks.filter((look) => look.spot === 'core' && !look.suspect);
  const piece = core.at(-1)?.piece ?? null;
  const readings = readingsOf(run, piece, (look) => look.spot === 'core', 'high');
  const air = restingAir(book, run);
  const sides = sidesOf(book, run);
  const [a, b] = readings.slice(-2);
  const last = b ?? a;
  const from =
    last === undefined
      ? { value: assumed.offTheHeat, at: run.start, basis: 'common_practice' as const }
      : { value: last.value, at: last.at, basis: 'read' as const };
  const common = { readings, air, target: INTO_CABINET, sides, from };
  if (a !== undefined && b !== undefined) return { ...common, ...byReadings(a, b, air) };
  return { ...common, ...bySize(from, sides, air) };
}

function restingAir(book: Book, run: JudgedRun): RestPlan['air'] {
  const last = (run.equipment === null ? [] : (book.air.get(run.equipment) ?? [])).findLast(
    ({ at, suspect }) => at >= run.start && at <= book.asOf && !suspect,
  );
  return last === undefined
    ? { value: assumed.restAir, within: assumed.restAirWithin, basis: 'assumed' }
    : { value: converted(last.value, last.unit, 'degF'), within: assumed.reading, basis: 'read' };
}

function byReadings(a: Reading, b: Reading, air: RestPlan['air']) {
  const hours = (b.at - a.at) / hour;
  const found = twoReadingForecast(
    { first: a.value, second: b.value, hours, air: air.value, u: Math.max(a.u, b.u), uAir: air.within },
    INTO_CABINET,
  );
  const middle = restTo160({ t: 0, y: a.value }, { t: hours, y: b.value }, air.value);
  const at = (after: number | null | undefined): number | null =>
    after === null || after === undefined ? null : b.at + after * hour;
  return {
    by: 'readings' as const,
    middle: middle === null ? null : a.at + middle * hour,
    earliest: at(found?.earliest),
    latest: at(found?.latest),
    rate: twoReadingRate(a.value, b.value, air.value, hours)?.rate ?? null,
  };
}

function bySize(from: RestPlan['from'], sides: number[] | null, air: RestPlan['air']) {
  const nothing = { by: 'nothing' as const, middle: null, earliest: null, latest: null, rate: null };
  if (sides === null) return nothing;
  const [slow, quick] = assumed.restSurface;
  const hoursAt = (h: number, airAt: number): number | null =>
    restBrickCore({ sides, material: { h, ...assumed.material }, from: from.value, air: airAt }, INTO_CABINET)
      ?.hours ?? null;
  const earliest = hoursAt(quick, air.value - air.within);
  const latest = hoursAt(slow, air.value + air.within);
  if (earliest === null) return nothing;
  return {
    by: 'size' as const,
    middle: null,
    earliest: from.at + earliest * (1 - assumed.spread) * hour,
    latest: latest === null ? null : from.at + latest * (1 + assumed.spread) * hour,
    rate: null,
  };
}
