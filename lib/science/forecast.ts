import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import { allFinite, increasing } from './finite.ts';
import type { TimedReadings } from './profile-fit.ts';
import { between, LAGS, type Lag, lags, qAt } from './sphere-lag.ts';

/**
 * M2: when a cooling (or resting) core passes a target, as a posterior over equivalent spheres with lag j, rate k
 * and air unknown, by brute force on a grid. Temperatures °F, times h from the first reading. Own algorithm
 * (derived). Every time is class W; misfit is class S. Show a range, never the middle alone, and the measured cover
 * (cover.ts), not the nominal one: "at the latest" is promised to nobody.
 */
export type Uncertain = {
  air: number;
  /** Standard deviations: of a reading, of the model, of the air. */
  s: number;
  sModel: number;
  sAir: number;
};

/** What is assumed of every forecast on a screen, °F: the measured cover speaks of these. */
export const ASSUMED: Omit<Uncertain, 'air'> = { s: 1, sModel: 1, sAir: 1 };

export type Grid = { rates: number; airs: number };
export const GRID: Grid = { rates: 300, airs: 5 };

const LN_FIRST_RATE = Math.log(0.02);
const LN_LAST_RATE = Math.log(4);
const AIR_REACH = 1.5;
/** Nearer to the air than this the first reading says nothing about the rate. */
const LEAST_DIFFERENCE = 3;
const ENDS = [0.05, 0.5, 0.95] as const;

/** Hours from the first reading; null: no finite time. */
export type Quantiles = { q05: number | null; q50: number | null; q95: number | null };

export type Posterior = {
  times: Quantiles[];
  /** Least of Σ(y − pred)²/(s² + s_model²) + z² over the grid. */
  chi2: number;
  /** False: probe moved, near the surface, food stirred or moved, air changed. Null with fewer than 3 readings. */
  fits: boolean | null;
};

type Weights = {
  /** Per row (lag × air): for each rate, the weight of this rate and all faster ones, of a total of 1. */
  faster: Float64Array;
  chi2: number;
};

const rateStep = ({ rates }: Grid): number => (LN_LAST_RATE - LN_FIRST_RATE) / (rates - 1);
const zOf = (place: number, { airs }: Grid): number => -AIR_REACH + (2 * AIR_REACH * place) / (airs - 1);

/**
 * χ² of every node. θ depends on k·t only and is looked up once for all airs; pred − y is linear in the air:
 * Ta + (y1 − Ta)θ − y = Ta(1 − θ) + y1 θ − y.
 */
function misfits(readings: TimedReadings, known: Uncertain, grid: Grid, all: readonly Lag[]): Float64Array {
  const { t, y } = readings;
  const [t1 = 0] = t;
  const [y1 = 0] = y;
  const step = rateStep(grid);
  const scale = 1 / (known.s ** 2 + known.sModel ** 2);
  const found = new Float64Array(LAGS * grid.airs * grid.rates);
  const later = t.slice(1).map((at, i) => ({ lnHours: Math.log(at - t1), y: y[i + 1] ?? 0 }));
  for (const [j, { table }] of all.entries())
    for (let m = 0; m < grid.rates; m += 1) {
      // Σ(c + d·Ta)² = cc + 2·cd·Ta + dd·Ta²
      let [cc, cd, dd] = [0, 0, 0];
      const lnRate = LN_FIRST_RATE + m * step;
      for (const reading of later) {
        const left = between(table, lnRate + reading.lnHours);
        // Counted from the air's middle, so that the three sums lose no digits.
        const c = known.air + (y1 - known.air) * left - reading.y;
        const d = 1 - left;
        cc += c * c;
        cd += c * d;
        dd += d * d;
      }
      for (let z = 0; z < grid.airs; z += 1) {
        const off = zOf(z, grid);
        const shift = off * known.sAir;
        found[(j * grid.airs + z) * grid.rates + m] =
          Math.max(0, cc + 2 * cd * shift + dd * shift * shift) * scale + off * off;
      }
    }
  return found;
}

function weigh(readings: TimedReadings, known: Uncertain, grid: Grid, all: readonly Lag[]): Weights {
  const faster = misfits(readings, known, grid, all);
  let chi2 = Infinity;
  for (const each of faster) if (each < chi2) chi2 = each;
  let total = 0;
  for (let row = 0; row < LAGS * grid.airs; row += 1) {
    let sum = 0;
    for (let m = grid.rates - 1; m >= 0; m -= 1) {
      const at = row * grid.rates + m;
      const behind = ((faster[at] ?? 0) - chi2) / 2;
      if (behind < 60) sum += Math.exp(-behind);
      faster[at] = sum;
    }
    total += sum;
  }
  for (let i = 0; i < faster.length; i += 1) faster[i] = (faster[i] ?? 0) / total;
  return { faster, chi2 };
}

/** ln q at which each row (lag × air) is at the target; it does not depend on the rate. */
function rowsAt(y1: number, known: Uncertain, grid: Grid, all: readonly Lag[], target: number): Float64Array {
  const found = new Float64Array(LAGS * grid.airs);
  for (const [j, lag] of all.entries())
    for (let z = 0; z < grid.airs; z += 1) {
      const air = known.air + zOf(z, grid) * known.sAir;
      found[j * grid.airs + z] = Math.log(qAt(lag, (target - air) / (y1 - air)));
    }
  return found;
}

/**
 * Weight of all nodes whose time q/k is at most e^lnTime: in each row these are the rates from some place on, whose
 * sum is kept. This takes the place of sorting all nodes by time.
 */
function weightBy(lnTime: number, lnQ: Float64Array, { faster }: Weights, grid: Grid): number {
  const step = rateStep(grid);
  let sum = 0;
  for (let row = 0; row < lnQ.length; row += 1) {
    const from = Math.max(0, Math.ceil(((lnQ[row] ?? Infinity) - lnTime - LN_FIRST_RATE) / step));
    if (from < grid.rates) sum += faster[row * grid.rates + from] ?? 0;
  }
  return sum;
}

const EARLIEST_LN = Math.log(1e-6);
const LATEST_LN = Math.log(1e4);

/** The time of the first node at which the weights add up to `p`: halving to it, then nothing lies in between. */
function quantileOf(p: number, lnQ: Float64Array, weights: Weights, grid: Grid): number | null {
  if (weightBy(EARLIEST_LN, lnQ, weights, grid) >= p) return 0;
  if (weightBy(LATEST_LN, lnQ, weights, grid) < p) return null;
  let [low, high] = [EARLIEST_LN, LATEST_LN];
  for (let i = 0; i < 44; i += 1) {
    const middle = (low + high) / 2;
    if (weightBy(middle, lnQ, weights, grid) >= p) high = middle;
    else low = middle;
  }
  return Math.exp(high);
}

const FIT_LEVEL = 0.99;

function usable({ t, y }: TimedReadings, { air, s, sModel, sAir }: Uncertain, grid: Grid): boolean {
  if (t.length < 2 || t.length !== y.length || !increasing(t) || !allFinite(...y, air, s, sModel, sAir))
    return false;
  if (s < 0 || sModel < 0 || sAir < 0 || s + sModel <= 0 || grid.rates < 2 || grid.airs < 2) return false;
  return Math.abs((y[0] ?? air) - air) >= LEAST_DIFFERENCE;
}

/**
 * Quantiles 0.05, 0.50, 0.95 of the time to each target, the least χ², and whether the readings fit one undisturbed
 * cooling (0.99 point of χ² with n − 2 degrees, n ≥ 3). The first reading is taken as the exact, uniform start: a
 * noted move, stir, cut or change of air always starts a new series. Null with fewer than 2 readings, t that do not
 * increase, a first reading within 3 °F of the air, or no uncertainty at all.
 */
export function posterior(
  readings: TimedReadings,
  known: Uncertain,
  targets: readonly number[],
  grid: Grid = GRID,
): Posterior | null {
  if (!usable(readings, known, grid) || !allFinite(...targets)) return null;
  const all = lags();
  const weights = weigh(readings, known, grid, all);
  const [y1 = 0] = readings.y;
  const n = readings.t.length;
  return {
    chi2: weights.chi2,
    fits: n < 3 ? null : weights.chi2 <= chiSquareQuantile(FIT_LEVEL, n - 2),
    times: targets.map((target) => {
      const lnQ = rowsAt(y1, known, grid, all, target);
      const [q05, q50, q95] = ENDS.map((p) => quantileOf(p, lnQ, weights, grid));
      return { q05: q05 ?? null, q50: q50 ?? null, q95: q95 ?? null };
    }),
  };
}

/** What a screen may say about one target. Every time in hours from the first reading. */
export type Outlook =
  /** `latest` null: no end is known; say "not before" only. */
  | { say: 'range'; earliest: number; middle: number | null; latest: number | null }
  | { say: 'air_may_not_get_there' }
  | { say: 'does_not_fit' }
  | { say: 'too_few_readings' };

/**
 * Both ends of a shown range are taken out by this share of their time: equivalent spheres are surer of a brick than
 * they may be. Measured over synthetic foods (cover.ts): without it the range of a brick, or from eight readings and
 * more, holds 77 of 100 true times; with it no shape and no number of readings is under 85.
 */
const WIDER = 0.03;

/**
 * The forecast as it may be shown: no time from readings that do not fit, and none to a target at or within 1.5
 * standard deviations of the air ("this air may never get it there"). A range is wider than the posterior's. Class W.
 */
export function outlook(
  readings: TimedReadings,
  known: Uncertain,
  targets: readonly number[],
  grid: Grid = GRID,
): Outlook[] {
  return outlookBy(posterior(readings, known, targets, grid), readings, known, targets);
}

/** The same from a posterior that was worked out for these targets. */
export function outlookBy(
  found: Posterior | null,
  readings: TimedReadings,
  known: Uncertain,
  targets: readonly number[],
): Outlook[] {
  const [y1 = known.air] = readings.y;
  return targets.map((target, i): Outlook => {
    if (found?.fits === false) return { say: 'does_not_fit' };
    const way = Math.sign(y1 - known.air);
    if (way * (target - known.air) <= AIR_REACH * known.sAir) return { say: 'air_may_not_get_there' };
    const times = found?.times[i];
    if (times === undefined || times.q05 === null) return { say: 'too_few_readings' };
    return {
      say: 'range',
      earliest: times.q05 * (1 - WIDER),
      middle: times.q50,
      latest: times.q95 === null ? null : times.q95 * (1 + WIDER),
    };
  });
}
