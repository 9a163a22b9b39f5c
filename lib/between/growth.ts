import { growthFromReadings } from '#lib/science/growth.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { assumed } from './assumed.ts';
import { hour, type Reading } from './readings.ts';

/**
 * Growth of C. perfringens in a stretch that nobody measured, as an upper bound [log10]: the fastest published rate
 * between the assumed surroundings and the highest reading at its ends, for the whole length. Class A: it may only
 * argue for throwing away. Small says nothing: other organisms, toxins that heat does not destroy, unknown handling.
 */
export type GrowthBound =
  | {
      has: true;
      most: number;
      from: number;
      to: number;
      hours: number;
      low: number;
      high: number;
      between: 'readings' | 'room';
    }
  | { has: false; lacks: 'food' | 'readings' };

/** Foods that the published rates were measured in or near to: plain cooked meat. Cured, sauced or other food: none. */
const published: ReadonlySet<FoodClass> = new Set([
  'intact_roast',
  'injected_or_tenderized',
  'ground',
  'poultry',
  'pork_whole',
  'beef_whole',
  'pulled_or_chopped',
]);

/**
 * @param noHeat nothing warmed the food again in the stretch: then it stayed between its two readings
 */
export function growthBound(
  food: FoodClass | undefined,
  before: Reading | null,
  after: Reading | null,
  noHeat: boolean,
): GrowthBound {
  if (food === undefined || !published.has(food)) return { has: false, lacks: 'food' };
  if (before === null || after === null || after.at <= before.at) return { has: false, lacks: 'readings' };
  const u = Math.max(before.u, after.u);
  const low = noHeat ? Math.min(before.value, after.value) : assumed.coldestRoom;
  const high = Math.max(before.value, after.value);
  const hours = (after.at - before.at) / hour;
  const found = growthFromReadings([0, hours], [low, high], u);
  if (found === null) return { has: false, lacks: 'readings' };
  return {
    has: true,
    most: found.noLagUpperStep,
    from: before.at,
    to: after.at,
    hours,
    low: low - u,
    high: high + u,
    between: noHeat ? 'readings' : 'room',
  };
}
