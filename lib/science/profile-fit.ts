import { allFinite, finiteOrNull } from './finite.ts';
import { bisect, leastPlace } from './root.ts';

/**
 * M1: cooling toward known air by least squares with profile likelihood, y = Ta + A e^(−k t) + error of known σ.
 * Only when every reading is past the lag, the air is known and there are at least 3 readings; else M2
 * (forecast.ts). Temperatures °F, times h. Own algorithm (derived).
 */
const LEAST_K = 0.001;
const MOST_K = 20;
/** χ², 1 degree, 0.95. */
const CHI2_95 = 3.841458820694124;
const LATEST_HOURS = 200;
const EARLIEST_HOURS = 50;

export type TimedReadings = { t: readonly number[]; y: readonly number[] };

const logSpaced = (many: number): number[] =>
  Array.from({ length: many }, (_, i) => LEAST_K * (MOST_K / LEAST_K) ** (i / (many - 1)));
const grids = { fit: logSpaced(4000), limits: logSpaced(1500) };

/** Least of `f` over the grid, then between the neighbours of the best. */
function leastOver(grid: readonly number[], f: (k: number) => number): { k: number; value: number } {
  let best = 0;
  let value = Infinity;
  for (const [i, k] of grid.entries()) {
    const here = f(k);
    if (here < value) [best, value] = [i, here];
  }
  const k = leastPlace(f, grid[best - 1] ?? LEAST_K, grid[best + 1] ?? MOST_K);
  const refined = f(k);
  return refined < value ? { k, value: refined } : { k: grid[best] ?? LEAST_K, value };
}

export type ProfileTime = {
  /** On the t axis of the readings; null: the target is not on the food's way. */
  at: number | null;
  /** 95 % limits; null: not crossed within 200 h after, or by 50 h before the first reading. */
  lo95: number | null;
  hi95: number | null;
};

export type ProfileFit = { k: number; A: number; rss: number; times: ProfileTime[] };

const never: ProfileTime = { at: null, lo95: null, hi95: null };

/** Where `excess` first is positive from `from` toward `end`: growing steps, then halving. Null: nowhere. */
function crossing(excess: (at: number) => number, from: number, end: number): number | null {
  const way = Math.sign(end - from);
  let near = from;
  let step = 0.01;
  while (near !== end) {
    const far = way * (near + way * step - end) >= 0 ? end : near + way * step;
    if (excess(far) >= 0) return bisect(excess, Math.min(near, far), Math.max(near, far), 50);
    near = far;
    step = Math.min(step * 1.2, 1);
  }
  return null;
}

function timeOf(
  { t, y }: TimedReadings,
  air: number,
  sigma: number,
  fit: { k: number; A: number; rss: number },
  target: number,
): ProfileTime {
  if (!((target - air) * fit.A > 0)) return never;
  const at = finiteOrNull(Math.log(fit.A / (target - air)) / fit.k);
  if (at === null) return never;
  const forced = (tau: number) => (k: number) => {
    let sum = 0;
    for (let i = 0; i < t.length; i += 1)
      sum += ((y[i] ?? 0) - air - (target - air) * Math.exp(k * (tau - (t[i] ?? 0)))) ** 2;
    return Number.isNaN(sum) ? Infinity : sum;
  };
  const excess = (tau: number): number =>
    (leastOver(grids.limits, forced(tau)).value - fit.rss) / sigma ** 2 - CHI2_95;
  return {
    at,
    lo95: crossing(excess, at, Math.min(at, Math.min(...t) - EARLIEST_HOURS)),
    hi95: crossing(excess, at, at + LATEST_HOURS),
  };
}

/**
 * k [1/h] in 0.001 … 20, A [°F], rss [°F²], and for each target the time ln(A/(Tt − Ta))/k with the nearest times
 * at which the best curve forced through the target fits worse by χ² = 3.84. Null with fewer than 2 readings, σ ≤ 0
 * or all t equal. Class W.
 */
export function profileFit(
  readings: TimedReadings,
  air: number,
  sigma: number,
  targets: readonly number[],
): ProfileFit | null {
  const { t, y } = readings;
  if (t.length < 2 || t.length !== y.length || !allFinite(...t, ...y, air, sigma, ...targets)) return null;
  if (sigma <= 0 || t.every((each) => each === t[0])) return null;
  const amplitude = (k: number): number => {
    let over = 0;
    let under = 0;
    for (let i = 0; i < t.length; i += 1) {
      const e = Math.exp(-k * (t[i] ?? 0));
      over += ((y[i] ?? 0) - air) * e;
      under += e * e;
    }
    return over / under;
  };
  const residual = (k: number): number => {
    const A = amplitude(k);
    let sum = 0;
    for (let i = 0; i < t.length; i += 1) sum += ((y[i] ?? 0) - air - A * Math.exp(-k * (t[i] ?? 0))) ** 2;
    return Number.isNaN(sum) ? Infinity : sum;
  };
  const { k, value: rss } = leastOver(grids.fit, residual);
  const A = finiteOrNull(amplitude(k));
  if (A === null || !Number.isFinite(rss)) return null;
  return { k, A, rss, times: targets.map((target) => timeOf(readings, air, sigma, { k, A, rss }, target)) };
}

export type ThreePointAir = {
  /** °F; null when the three lie on a straight line. */
  air: number | null;
  signalToNoise: number;
  /** False: do not use the number, ask for the temperature of the air. */
  identifiable: boolean;
};

/**
 * Air from three equally spaced readings (Aitken's delta-squared): (ac − b²)/(a − 2b + c), usable when |a − 2b +
 * c|/(√6·u) ≥ 3, u the standard uncertainty of one reading. Null when u ≤ 0. Class S.
 */
export function threePointAir(a: number, b: number, c: number, u: number): ThreePointAir | null {
  if (!allFinite(a, b, c, u) || u <= 0) return null;
  const second = a - 2 * b + c;
  const signalToNoise = Math.abs(second) / (Math.sqrt(6) * u);
  const air = second === 0 ? null : finiteOrNull((a * c - b * b) / second);
  return { air, signalToNoise, identifiable: signalToNoise >= 3 && air !== null };
}
