import { linearRegression, mean } from 'simple-statistics';
import { allFinite, finiteOrNull } from './finite.ts';

/**
 * Control charts of a cabinet or a thermometer. Class W all over: a point inside the limits proves nothing about
 * food. Indices count from 1. NIST/SEMATECH e-Handbook 6.3.2.2 to 6.3.2.4 (read, second hand); Nelson 1984, J.
 * Quality Technology 16:237–239 (rules read in a glossary).
 */
const D2 = 1.128;
const D4 = 3.267;
const SIGMAS = 3;

const movingRange = (x: readonly number[]): number =>
  mean(x.slice(1).map((each, i) => Math.abs(each - (x[i] ?? each))));

export type Individuals = { mean: number; mrBar: number; ucl: number; lcl: number; mrUcl: number };

/** Individuals and moving range: mean ± 3·mean|Δ|/1.128, ranges to 3.267·mean|Δ|. Null when n < 2; show from 20 on. */
export function individuals(x: readonly number[]): Individuals | null {
  if (x.length < 2 || !allFinite(...x)) return null;
  const middle = mean([...x]);
  const mrBar = movingRange(x);
  const reach = (SIGMAS * mrBar) / D2;
  return { mean: middle, mrBar, ucl: middle + reach, lcl: middle - reach, mrUcl: D4 * mrBar };
}

export type Ewma = { z: number[]; ucl: number; lcl: number; outExactLimits: number[] };

/**
 * z_i = λx_i + (1 − λ)z_(i−1) from `start`; limits z0 ± Lσ√(λ/(2 − λ)), and which z lie outside the exact limits
 * of their own i. Null when λ is outside (0, 1] or σ ≤ 0.
 */
export function ewma(
  x: readonly number[],
  { lambda, start, sigma, reach }: { lambda: number; start: number; sigma: number; reach: number },
): Ewma | null {
  if (!allFinite(...x, lambda, start, sigma, reach) || lambda <= 0 || lambda > 1 || sigma <= 0) return null;
  const wide = reach * sigma * Math.sqrt(lambda / (2 - lambda));
  const z: number[] = [];
  const outExactLimits: number[] = [];
  let last = start;
  for (const [i, each] of x.entries()) {
    last = lambda * each + (1 - lambda) * last;
    z.push(last);
    if (Math.abs(last - start) > wide * Math.sqrt(1 - (1 - lambda) ** (2 * (i + 1))))
      outExactLimits.push(i + 1);
  }
  return { z, ucl: start + wide, lcl: start - wide, outExactLimits };
}

export type Cusum = { high: number[]; low: number[]; signals: number[] };

/** Two sums from 0, never reset: max(0, s + x − target − k), max(0, s + target − k − x); signals where one is over h. */
export function cusum(
  x: readonly number[],
  { target, k, h }: { target: number; k: number; h: number },
): Cusum | null {
  if (!allFinite(...x, target, k, h)) return null;
  const sums: Cusum = { high: [], low: [], signals: [] };
  let high = 0;
  let low = 0;
  for (const [i, each] of x.entries()) {
    high = Math.max(0, high + each - target - k);
    low = Math.max(0, low + target - k - each);
    sums.high.push(high);
    sums.low.push(low);
    if (high > h || low > h) sums.signals.push(i + 1);
  }
  return sums;
}

export type RunRules = {
  rule1: number[];
  rule2: number[];
  rule3: number[];
  rule5: number[];
  rule6: number[];
};

/** The last points (from 1) of the windows of `length` for which `holds`. */
const windows = (
  z: readonly number[],
  length: number,
  holds: (window: readonly number[]) => boolean,
): number[] => z.flatMap((_, i) => (i + 1 >= length && holds(z.slice(i + 1 - length, i + 1)) ? [i + 1] : []));

const atLeast = (window: readonly number[], many: number, past: number): boolean =>
  window.filter((z) => z > past).length >= many || window.filter((z) => z < -past).length >= many;

const steps = (window: readonly number[]): number[] => window.slice(1).map((z, i) => z - (window[i] ?? z));

/**
 * Nelson's rules with a given mean and σ: 1 outside 3σ; 2 nine in a row on one side; 3 six in a row all rising or
 * all falling; 5 two of three past 2σ on one side; 6 four of five past 1σ on one side. Null when σ ≤ 0.
 */
export function runRules(x: readonly number[], middle: number, sigma: number): RunRules | null {
  if (!allFinite(...x, middle, sigma) || sigma <= 0) return null;
  const z = x.map((each) => (each - middle) / sigma);
  const oneWay = (values: readonly number[]): boolean =>
    values.every((v) => v > 0) || values.every((v) => v < 0);
  return {
    rule1: windows(z, 1, (window) => atLeast(window, 1, 3)),
    rule2: windows(z, 9, oneWay),
    // Steps are taken of x itself: dividing by σ may make two neighbours equal, or two equals differ.
    rule3: windows(x, 6, (window) => oneWay(steps(window))),
    rule5: windows(z, 3, (window) => atLeast(window, 2, 2)),
    rule6: windows(z, 5, (window) => atLeast(window, 4, 1)),
  };
}

export type Adjusted = { r1: number; sigmaMr: number; sigmaAdj: number; lclNaive: number; lclAdj: number };

/**
 * Limits of a series whose neighbours are alike: r1 = Σ(x_i − m)(x_(i+1) − m)/Σ(x_i − m)², σ_adj = σ_mr/√(1 − r1),
 * lower limits m − 3σ. A thermostat swings slowly, so the naive limits are far too narrow. Null when n < 3 or all
 * are equal. Factor derived.
 */
export function adjustedForNeighbours(x: readonly number[]): Adjusted | null {
  if (x.length < 3 || !allFinite(...x)) return null;
  const m = mean([...x]);
  const spread = x.reduce((sum, each) => sum + (each - m) ** 2, 0);
  if (spread === 0 || x.every((each) => each === x[0])) return null;
  const r1 = x.slice(1).reduce((sum, each, i) => sum + (each - m) * ((x[i] ?? m) - m), 0) / spread;
  const sigmaMr = movingRange(x) / D2;
  const sigmaAdj = sigmaMr / Math.sqrt(1 - r1);
  return { r1, sigmaMr, sigmaAdj, lclNaive: m - SIGMAS * sigmaMr, lclAdj: m - SIGMAS * sigmaAdj };
}

export type Drift = { slope: number; slopeSe: number; intercept: number; tCross: number | null };

/**
 * Least squares y = a + b t: slope and its standard error, and when the line is at `limit`; null when it does not
 * fall. Null when n < 3 or all t are equal.
 */
export function driftCrossing(t: readonly number[], y: readonly number[], limit: number): Drift | null {
  if (t.length < 3 || t.length !== y.length || !allFinite(...t, ...y, limit)) return null;
  if (t.every((each) => each === t[0])) return null;
  // Around the middle of t, so that instants far from 0 lose no digits.
  const middle = mean([...t]);
  const { m: slope, b: atMiddle } = linearRegression(t.map((each, i) => [each - middle, y[i] ?? Number.NaN]));
  const left = t.reduce((sum, each, i) => sum + ((y[i] ?? 0) - atMiddle - slope * (each - middle)) ** 2, 0);
  const width = t.reduce((sum, each) => sum + (each - middle) ** 2, 0);
  return {
    slope,
    slopeSe: Math.sqrt(left / (t.length - 2) / width),
    intercept: atMiddle - slope * middle,
    tCross: slope < 0 ? finiteOrNull(middle + (limit - atMiddle) / slope) : null,
  };
}
