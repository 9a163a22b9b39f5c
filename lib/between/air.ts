import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { converted } from '#shared/units.ts';
import { assumed } from './assumed.ts';
import { hour } from './readings.ts';

/** The air (or the water) round food, °F, and how it is known: read, said with the step, set on the dial, or ice. */
export type AirRound = { value: number; basis: 'read' | 'said' | 'set' | 'ice' };

/** Null: nobody said how cold it is where the food stands. A fresh reading goes before what was said at the start. */
export function airRound(book: Book, run: JudgedRun): AirRound | null {
  const place = run.equipment === null ? undefined : book.kitchen.equipment.get(run.equipment);
  if (place?.kind === 'ice_bath') return { value: assumed.iceWater, basis: 'ice' };
  const until = run.end ?? book.asOf;
  const last = (run.equipment === null ? [] : (book.air.get(run.equipment) ?? [])).findLast(
    ({ at, suspect }) => at <= until && !suspect && until - at <= assumed.airFreshHours * hour,
  );
  if (last !== undefined) return { value: converted(last.value, last.unit, 'degF'), basis: 'read' };
  if (run.details.cooler_F !== undefined) return { value: run.details.cooler_F, basis: 'said' };
  return place?.set == null
    ? null
    : { value: converted(place.set.value, place.set.unit, 'degF'), basis: 'set' };
}
