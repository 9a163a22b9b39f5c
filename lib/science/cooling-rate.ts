import { allFinite, finiteOrNull } from './finite.ts';
import { bisect } from './root.ts';

/**
 * Cooling rate from two readings. Model (Newton): T(t) = Ta + (T1 − Ta)·10^(−r t), Ta the steady temperature of
 * the air really around the food. It holds past the lag of the first hours, and while nobody stirs, cuts or moves
 * the food between the two readings. Temperatures in °F, times in h. The rate equation: Schaffner et al. 2015 and
 * Hedeen, Schaffner and Brown 2022 (read, second hand); the rest derived.
 */

/** The two stages of cooling that the rates below are asked for: Food Code 3-501.14(A) (read). */
const STAGES = { from: 135, between: 70, to: 41, firstHours: 2, allHours: 6 } as const;

export type Rate = {
  /** log10 of the difference lost per hour; negative when the food moved away from the air. */
  rate: number;
  /** Hours for a tenth of the difference to be left; null when the rate is not positive. */
  f: number | null;
  /** rate·ln 10, 1/h. */
  k: number;
};

/**
 * r = log10((T1 − Ta)/(T2 − Ta))/dt, f = 1/r, k = r·ln 10. Heating is the same formula. Null when dt ≤ 0 or the
 * two readings do not lie on one side of the air. Class S. Source: as the top of this file.
 */
export function twoReadingRate(from: number, to: number, air: number, hours: number): Rate | null {
  if (!allFinite(from, to, air, hours) || hours <= 0 || (from - air) * (to - air) <= 0) return null;
  const rate = Math.log10((from - air) / (to - air)) / hours;
  if (!Number.isFinite(rate)) return null;
  return { rate, f: rate > 0 ? finiteOrNull(1 / rate) : null, k: rate * Math.LN10 };
}

/**
 * The rate that both stages ask for in air of `air` °F [log10/h]: stage1 = log10((135 − Ta)/(70 − Ta))/2, total =
 * log10((135 − Ta)/(41 − Ta))/6, required = the larger. Null when Ta ≥ 41: the food never gets there. Class S.
 */
export function requiredRate(air: number): { stage1: number; total: number; required: number } | null {
  if (!Number.isFinite(air) || air >= STAGES.to) return null;
  const { from, between, to, firstHours, allHours } = STAGES;
  const stage1 = Math.log10((from - air) / (between - air)) / firstHours;
  const total = Math.log10((from - air) / (to - air)) / allHours;
  return { stage1, total, required: Math.max(stage1, total) };
}

/**
 * The air (°F) in which both stages ask for the same rate, about 37.35 °F: colder, the two hours ask more; warmer,
 * the six hours do. Root of stage1 = total. Class S. Derived.
 */
export function equalRateAmbient(): { air: number; rate: number } {
  const gap = (air: number): number => {
    const asked = requiredRate(air);
    return asked === null ? Number.POSITIVE_INFINITY : asked.total - asked.stage1;
  };
  const air = bisect(gap, 0, 40.9, 200);
  return { air, rate: requiredRate(air)?.stage1 ?? 0 };
}

/**
 * Hours from `now` to `target` at `rate` [log10/h]: log10((T_now − Ta)/(T_target − Ta))/r. Negative = already
 * passed. Null when the rate is not positive, or the target lies at or beyond the air. Class W.
 */
export function timeTo(now: number, air: number, rate: number, target: number): number | null {
  if (!allFinite(now, air, rate, target) || rate <= 0 || (now - air) * (target - air) <= 0) return null;
  return finiteOrNull(Math.log10((now - air) / (target - air)) / rate);
}

export type TwoReadings = {
  /** First and second reading, °F. */
  first: number;
  second: number;
  /** Hours between them. */
  hours: number;
  /** Air, °F, and the half-widths of a reading and of the air. */
  air: number;
  u: number;
  uAir: number;
};

/** Hours after the second reading; Infinity inside this file only. */
function corner(first: number, second: number, air: number, hours: number, target: number): number {
  if ((first - air) * (second - air) <= 0 || (target - air) * (second - air) <= 0) return Infinity;
  const rate = Math.log10((first - air) / (second - air)) / hours;
  if (!(rate > 0)) return Infinity;
  return Math.max(0, Math.log10((second - air) / (target - air)) / rate);
}

export type TwoReadingForecast = { point: number | null; earliest: number | null; latest: number | null };

/**
 * Hours after the second reading until `target`: at the readings themselves, and the least and the greatest over
 * the eight corners y1 ± u, y2 ± u, Ta ± ua (the true extremes, derived). A null member: no finite time; with
 * `latest` null show no time but `earliest` as "not before". Null when dt ≤ 0 or a half-width is negative. Class W.
 * Weak: an early forecast is too late (harmless); air that warms makes it too early, so give ua ≥ 2 °F.
 */
export function twoReadingForecast(given: TwoReadings, target: number): TwoReadingForecast | null {
  const { first, second, hours, air, u, uAir } = given;
  if (!allFinite(first, second, hours, air, u, uAir, target)) return null;
  if (hours <= 0 || u < 0 || uAir < 0) return null;
  let earliest = Infinity;
  let latest = 0;
  for (const a of [first - u, first + u])
    for (const b of [second - u, second + u])
      for (const c of [air - uAir, air + uAir]) {
        const time = corner(a, b, c, hours, target);
        earliest = Math.min(earliest, time);
        latest = Math.max(latest, time);
      }
  return {
    point: finiteOrNull(corner(first, second, air, hours, target)),
    earliest: finiteOrNull(earliest),
    latest: finiteOrNull(latest),
  };
}

/** A reading at `t` hours, counted from the moment when the whole piece was at one temperature. */
export type TimedTemperature = { t: number; y: number };

/**
 * f [h] and lag factor j from two readings of a piece that was at `start` °F throughout at t = 0: r from the two,
 * f = 1/r, j = (y2 − Ta)/(Ti − Ta)·10^(t2·r). j = 1 pure Newton, above 1 lag, below 1 a probe near the surface or
 * other air. Null when the rate is not positive or Ti = Ta. Class W.
 */
export function fjFromTwo(
  start: number,
  air: number,
  first: TimedTemperature,
  second: TimedTemperature,
): { f: number; j: number } | null {
  const found = twoReadingRate(first.y, second.y, air, second.t - first.t);
  if (found === null || found.f === null || !Number.isFinite(start) || start === air) return null;
  const j = finiteOrNull(((second.y - air) / (start - air)) * 10 ** (second.t * found.rate));
  return j === null ? null : { f: found.f, j };
}
