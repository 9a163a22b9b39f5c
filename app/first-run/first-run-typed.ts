import { listOf, numberOrNull, type Typed, textOf, wordsOrNull } from '#app/set-up/form/typed-values.ts';
import { heightMeant, heightUnitOf } from '#app/set-up/kitchen/altitude.ts';
import { startingChoice, startingHouse, startingThings } from '#shared/starting-values.ts';
import { unit as units } from '#shared/units.ts';

type Ids = { person: string; newId: () => string };
type House = { language: 'en' | 'es' };

/** The first form before anybody has typed. */
export const firstTyped = (profile: string): Typed => ({
  site_name: '',
  site_zone: '',
  site_altitude_m: '',
  site_unit: 'degF',
  site_day_starts: startingHouse.day_starts,
  site_profile: profile,
  person_name: '',
  person_initials: '',
  person_role: 'owner',
  person_phone: '',
  secret: '',
  secret_again: '',
  device: '',
  ...startingChoice,
});

/** The request that the form means; what it does not ask starts as the house usually has it. */
export function firstMeant(typed: Typed, { language }: House, { person, newId }: Ids): unknown {
  const asked = units.safeParse(textOf(typed, 'site_unit'));
  const unit = asked.success ? asked.data : 'degF';
  return {
    site: {
      name: textOf(typed, 'site_name'),
      address: null,
      zone: textOf(typed, 'site_zone'),
      altitude_m: heightMeant(numberOrNull(typed, 'site_altitude_m'), heightUnitOf(unit)),
      unit: textOf(typed, 'site_unit'),
      clock: startingHouse.clock[unit],
      language,
      day_starts: textOf(typed, 'site_day_starts'),
      closed_weekdays: [],
      closed_on: [],
      profile: textOf(typed, 'site_profile'),
      late_after_min: startingHouse.late_after_min,
      odd_above: startingHouse.odd_above[unit],
      paper: startingHouse.paper[unit],
      house: startingHouse.house,
    },
    person: {
      person,
      name: textOf(typed, 'person_name'),
      initials: textOf(typed, 'person_initials'),
      role: textOf(typed, 'person_role'),
      title: null,
      language,
      phone: wordsOrNull(typed, 'person_phone'),
      on_call: textOf(typed, 'person_phone') !== '',
      active: true,
    },
    secret: typed.secret, // as typed: a space at its end is part of it
    device: textOf(typed, 'device'),
    starting: startingThings(
      {
        equipment: listOf(typed, 'equipment'),
        probes: listOf(typed, 'probes'),
        foods: listOf(typed, 'foods'),
        plans: listOf(typed, 'plans'),
      },
      { unit, language, newId },
    ),
  };
}
