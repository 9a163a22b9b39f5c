import { centreTime, type Material } from './conduction.ts';
import { type TimedTemperature, timeTo, twoReadingRate } from './cooling-rate.ts';

/**
 * Resting from the smoker and reheating a brick. The core is the last place to cool: a core above 135 °F at a
 * predicted time says nothing about the thin end or the surface, which hot holding asks for.
 */
export type Brick = {
  /** Full sides, m. */
  sides: readonly number[];
  material: Material;
  /** Uniform start and steady air, °F. */
  from: number;
  air: number;
};

/** Hours (full series), f [h] and j until the core is at `target` °F. Null as `centreTime`. Class W. */
export function restBrickCore(
  { sides, material, from, air }: Brick,
  target: number,
): { hours: number | null; f: number; j: number } | null {
  const found = centreTime({ kind: 'brick', sides }, material, { from, air, target });
  return found === null ? null : { hours: found.full, f: found.f, j: found.j };
}

/** Reheating for hot holding: 165 °F within 2 h, Food Code 3-403.11(A) and (D) (read). */
const REHEAT = { target: 165, hours: 2 } as const;

/**
 * Hours until the core of a cold brick is at 165 °F in an oven, and whether that is within 2 h. It says that a plan
 * cannot work; it never says that food reached anything. Evaporation is left out: real reheating is slower. Null
 * as `centreTime`, and for a brick that is not colder than 165 °F in an oven that is not hotter. Class W.
 */
export function reheatCore(brick: Brick): { hours: number | null; withinTwoHours: boolean } | null {
  const found = restBrickCore(brick, REHEAT.target);
  if (found === null || brick.from > REHEAT.target) return null;
  return { hours: found.hours, withinTwoHours: found.hours !== null && found.hours <= REHEAT.hours };
}

/** A core of about 160 °F is when a rested piece goes into the cabinet (common practice). */
export const INTO_CABINET = 160;

/**
 * The time (h, on the axis of the readings) at which a resting piece is at 160 °F: t2 + log10((y2 − Ta)/(160 −
 * Ta))/r, r from the two readings. Null when r ≤ 0, Ta ≥ 160 or y2 < 160. Class W.
 */
export function restTo160(first: TimedTemperature, second: TimedTemperature, air: number): number | null {
  if (air >= INTO_CABINET || second.y < INTO_CABINET) return null;
  const found = twoReadingRate(first.y, second.y, air, second.t - first.t);
  const hours = found === null ? null : timeTo(second.y, air, found.rate, INTO_CABINET);
  return hours === null ? null : second.t + hours;
}
