import { allFinite, finiteOrNull } from './finite.ts';
import { bisect } from './root.ts';

/** How often to look, and what looks can claim. Temperatures °F, times h. Derived (binomial, Poisson, Newton). */

export type LostHeat = {
  from: number;
  air: number;
  /** Time constant of the coldest place, h. */
  tau: number;
  limit: number;
  /** Half-width of a reading. */
  u: number;
  /** Hours that food may be below the limit before it is found. */
  allowed: number;
};

/**
 * Heat is lost at t = 0 and food falls as Ta + (T0 − Ta)e^(−t/τ): when it is at the limit and at limit + u, and the
 * longest interval of looks that finds the loss in time. It holds only where staff act on every reading below limit
 * + 2u; where they act below limit + u, `allowed` alone is the interval. Null when Ta ≥ limit, T0 ≤ limit + u, τ ≤ 0
 * or `allowed` < 0. Class W.
 */
export function maxCheckInterval({
  from,
  air,
  tau,
  limit,
  u,
  allowed,
}: LostHeat): { tLimit: number; tAlarm: number; maxInterval: number } | null {
  if (!allFinite(from, air, tau, limit, u, allowed)) return null;
  if (air >= limit || from <= limit + u || tau <= 0 || allowed < 0 || u < 0) return null;
  const tLimit = tau * Math.log((from - air) / (limit - air));
  const tAlarm = tau * Math.log((from - air) / (limit + u - air));
  return { tLimit, tAlarm, maxInterval: tLimit + allowed - tAlarm };
}

/**
 * Chance that looks `interval` apart see an event of `length`: one, at least one of `events` (independent), and one
 * by looks at random moments of the same mean rate. Null when length < 0, interval ≤ 0 or events < 0. Class S.
 */
export function periodicDetect(
  length: number,
  interval: number,
  events: number,
): { one: number; atLeastOne: number; random: number } | null {
  if (!allFinite(length, interval, events) || length < 0 || interval <= 0 || events < 0) return null;
  const one = Math.min(1, length / interval);
  return { one, atLeastOne: 1 - (1 - one) ** events, random: 1 - Math.exp(-length / interval) };
}

/**
 * What n good looks and no bad one can claim: the share of bad is at most 1 − α^(1/n), about 3/n for α = 0.05.
 * Supposes independent looks, which looks at one cabinet are not. Null when n < 1 or α outside (0, 1). Class S.
 */
export function ruleOfThree(n: number, alpha: number): { upper: number; approx: number } | null {
  if (!allFinite(n, alpha) || n < 1 || alpha <= 0 || alpha >= 1) return null;
  return { upper: 1 - alpha ** (1 / n), approx: 3 / n };
}

export type TwoTau = { from: number; air: number; tauAir: number; tauFood: number; limit: number };

const MOST_HOURS = 500;

/**
 * A cabinet without heat: its air falls with τa to the room, the food follows its air with τf: Tf = Ta + (T0 −
 * Ta)(τf e^(−t/τf) − τa e^(−t/τa))/(τf − τa), and (1 + t/τ)e^(−t/τ) where both are equal. When the food is at the
 * limit (null past 500 h), food and air after 1 h. Null when the limit is outside (Ta, T0) or a τ ≤ 0. Class W.
 */
export function twoTau({
  from,
  air,
  tauAir,
  tauFood,
  limit,
}: TwoTau): { tFoodLimit: number | null; foodAfter1h: number; airAfter1h: number } | null {
  if (!allFinite(from, air, tauAir, tauFood, limit) || tauAir <= 0 || tauFood <= 0) return null;
  if (!(limit > air && limit < from)) return null;
  // Nearly equal constants lose all digits in the difference; the equal form is then nearer.
  const equal = Math.abs(tauFood - tauAir) < 1e-7 * tauFood;
  const left = (t: number): number =>
    equal
      ? (1 + t / tauFood) * Math.exp(-t / tauFood)
      : (tauFood * Math.exp(-t / tauFood) - tauAir * Math.exp(-t / tauAir)) / (tauFood - tauAir);
  const food = (t: number): number => air + (from - air) * left(t);
  const reached = food(MOST_HOURS) <= limit && food(1e-6) >= limit;
  return {
    tFoodLimit: reached ? bisect((t) => food(t) - limit, 1e-6, MOST_HOURS) : null,
    foodAfter1h: food(1),
    airAfter1h: air + (from - air) * Math.exp(-1 / tauAir),
  };
}

export type Drifting = {
  mean: number;
  sigma: number;
  /** Sigmas below the mean at which a reading warns. */
  k: number;
  /** The fall, °F/h. */
  drift: number;
  interval: number;
  limit: number;
};

export type DriftWarning = { warnLimit: number; tWarnWorst: number; tLimit: number; margin: number };

/**
 * Whether looks warn of a drift before the limit: warnLimit = mean − kσ, worst warning kσ/drift + interval, limit
 * reached at (mean − limit)/drift. A negative margin: the warning may come after the limit. Null unless drift > 0,
 * σ ≥ 0, interval ≥ 0. Class W.
 */
export function driftDetect({ mean, sigma, k, drift, interval, limit }: Drifting): DriftWarning | null {
  if (!allFinite(mean, sigma, k, drift, interval, limit)) return null;
  if (drift <= 0 || sigma < 0 || interval < 0) return null;
  const tWarnWorst = (k * sigma) / drift + interval;
  const tLimit = finiteOrNull((mean - limit) / drift);
  if (tLimit === null || !Number.isFinite(tWarnWorst)) return null;
  return { warnLimit: mean - k * sigma, tWarnWorst, tLimit, margin: tLimit - tWarnWorst };
}
