import Big from 'big.js';
import type { Body } from '#shared/entries/entry.ts';
import { converted, type Unit, unit as units } from '#shared/units.ts';
import {
  listOf,
  numberOrNull,
  partsOf,
  shown,
  type Typed,
  textOf,
  wordsOrNull,
} from '../form/typed-values.ts';
import { heightMeant, heightShown, heightUnitOf } from './altitude.ts';

/** The kitchen as its form shows it. */
export const kitchenTyped = (site: Body<'site'>): Typed => ({
  name: site.name,
  address: site.address ?? '',
  zone: site.zone,
  altitude_m: heightShown(site.altitude_m, heightUnitOf(site.unit)),
  unit: site.unit,
  clock: site.clock,
  language: site.language,
  day_starts: site.day_starts,
  closed_weekdays: site.closed_weekdays.map(String),
  closed_on: site.closed_on.join('\n'),
  profile: site.profile,
  late_after_min: shown(site.late_after_min),
  odd_above: shown(site.odd_above),
  paper: site.paper,
});

/** The bound of odd figures is in the kitchen's unit: where that changes and the bound does not, it is converted. */
function oddAbove(site: Body<'site'>, typed: Typed): number | string | null {
  const bound = numberOrNull(typed, 'odd_above');
  const unit = units.safeParse(textOf(typed, 'unit'));
  if (typeof bound !== 'number' || bound !== site.odd_above || !unit.success || unit.data === site.unit)
    return bound;
  return new Big(converted(bound, site.unit, unit.data)).round(0).toNumber();
}

/** What the form means; the house's rules are another page's and stay. `shownIn` = unit in which the page opened. */
export const kitchenMeant = (site: Body<'site'>, typed: Typed, shownIn: Unit): unknown => ({
  name: textOf(typed, 'name'),
  address: wordsOrNull(typed, 'address'),
  zone: textOf(typed, 'zone'),
  altitude_m: altitude(site, typed, shownIn),
  unit: textOf(typed, 'unit'),
  clock: textOf(typed, 'clock'),
  language: textOf(typed, 'language'),
  day_starts: textOf(typed, 'day_starts'),
  closed_weekdays: listOf(typed, 'closed_weekdays').map(Number),
  closed_on: partsOf(typed, 'closed_on'),
  profile: textOf(typed, 'profile'),
  late_after_min: numberOrNull(typed, 'late_after_min'),
  odd_above: oddAbove(site, typed),
  paper: textOf(typed, 'paper'),
  house: site.house,
});

/** A height that nobody touched stays as it is in the book: rounding to feet and back would change it. */
function altitude(site: Body<'site'>, typed: Typed, shownIn: Unit): number | string | null {
  const height = heightUnitOf(shownIn);
  if (textOf(typed, 'altitude_m') === heightShown(site.altitude_m, height)) return site.altitude_m;
  return heightMeant(numberOrNull(typed, 'altitude_m'), height);
}
