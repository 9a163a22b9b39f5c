import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import { ASSUMED } from '#lib/science/forecast.ts';
import { profileFit, type TimedReadings } from '#lib/science/profile-fit.ts';
import type { AirRound } from './air.ts';
import { assumed, metresPerInch } from './assumed.ts';

/**
 * M1 where M2 has no time: a plain curve toward known air. M2 takes the first reading as exact; when that one is off,
 * its readings do not fit, though they lie on one curve. Asked for only where each reading is past the lag of the pan,
 * the air was read, said or is ice, and there are at least three readings (docstring of profile-fit.ts).
 */
export type Plain = { earliest: number; middle: number; latest: number | null };

/** Fo from which the first term alone serves: Incropera and Çengel (memory). */
const PAST_LAG_FO = 0.2;
/** Standard error of a reading against the model, as M2 has it. */
const SIGMA = Math.hypot(ASSUMED.s, ASSUMED.sModel);
const FIT_LEVEL = 0.99;
/**
 * Both ends are taken out by this share of their time: the profile knows the air exactly and a kitchen does not.
 * Measured over pans whose first reading was off (tests/science/plain-curve.test.ts): 94 of 100 true times; without it 76.
 */
const WIDER = 0.06;
/** A target so near to the air is not promised, as of M2. */
const AIR_REACH = 1.5 * ASSUMED.sAir;

/** Hours from the start until the middle of a pan is past its lag; it cools from both faces. */
export const lagHours = (depthIn: number): number =>
  (PAST_LAG_FO * ((depthIn * metresPerInch) / 2) ** 2) / assumed.material.alpha / 3600;

/** Hours on the t axis of the readings, one for each target; null = none by this curve. Class W. */
export function byPlainCurve(
  readings: TimedReadings,
  air: number,
  targets: readonly number[],
): (Plain | null)[] | null {
  const { t } = readings;
  const [first = 0] = t;
  if (t.length < 3) return null;
  const reached = targets.filter((target) => target > air + AIR_REACH);
  const fit = profileFit(readings, air, SIGMA, reached);
  if (fit === null || fit.rss / SIGMA ** 2 > chiSquareQuantile(FIT_LEVEL, t.length - 2)) return null;
  const times = new Map(reached.map((target, i) => [target, fit.times[i]]));
  return targets.map((target) => {
    const time = times.get(target);
    if (time === undefined || time.at === null || time.lo95 === null) return null;
    return {
      earliest: time.lo95 - WIDER * Math.max(0, time.lo95 - first),
      middle: time.at,
      latest: time.hi95 === null ? null : time.hi95 + WIDER * Math.max(0, time.hi95 - first),
    };
  });
}

/** Every reading is past the lag of the pan since it was put there, and the air is known, not only set on a dial. */
export const mayUsePlainCurve = (
  sinceStart: readonly number[],
  air: AirRound,
  depthIn: number | null,
): boolean => {
  const [first] = sinceStart;
  return depthIn !== null && air.basis !== 'set' && first !== undefined && first >= lagHours(depthIn);
};
