import type { Verdict } from '#lib/judge/answer.ts';
import type { Facts } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import {
  type Asked,
  between,
  boiling,
  type Case,
  far,
  freezing,
  lateBy,
  look,
  type Published,
  temperature,
  time,
  verdictOf,
} from './crossing.ts';
import { around, keeps, tenths } from './published.ts';
import { at } from './records.ts';

function coolingStage({ figures }: Published, profile: Profile, place: number): Case[] {
  const stage = figures.cooling[place];
  if (stage === undefined) return [];
  const covers = `cooling.${place}`;
  const asked: Asked = { kind: 'cooling', stage: stage.name, profile };
  const before = stage.counted === 'from_previous' ? figures.cooling[place - 1] : undefined;
  const from = before?.to ?? stage.from;
  if (from === null) return [];
  const half = between(from, stage.to);
  // One that counts from the stage before starts when the food is no longer above that one's figure.
  const starts = before === undefined ? { yes: 'kept', no: 'not_shown' } : { yes: 'not_shown', no: 'kept' };
  return [
    ...temperature(
      before === undefined ? `${covers}.from` : `cooling.${place - 1}.to`,
      from,
      (ofTenths, unit) => verdictOf(asked, [look(0, ofTenths, unit), far(1, freezing)]),
      starts as { yes: Verdict; no: Verdict },
    ),
    ...temperature(
      `${covers}.to`,
      stage.to,
      (ofTenths, unit) => verdictOf(asked, [far(0, boiling), look(1, ofTenths, unit)]),
      { no: 'not_shown' },
    ),
    ...temperature(
      `${covers}.to`,
      stage.to,
      (ofTenths, unit) => verdictOf(asked, [far(0, half), look(stage.within.minutes, ofTenths, unit)]),
      { yes: 'not_shown' },
    ),
    ...time(
      `${covers}.within`,
      stage.within,
      (minutes) => verdictOf(asked, [far(0, boiling), far(minutes, freezing)]),
      'not_shown',
    ),
    ...lateBy(`${covers}.within`, stage.within, (minutes) =>
      verdictOf(asked, [far(0, half), far(minutes, half)]),
    ),
  ];
}

/** Cooling by the clock, in its stages and from what was warm from the start. */
export function cooling({ figures }: Published, profile: Profile): Case[] {
  const { cooling: stages, cooling_ambient: ambient } = figures;
  const cases = stages.flatMap((_, place) => coolingStage({ figures }, profile, place));
  if (ambient === null) return cases;
  const facts: Facts = { ingredients: 'ambient', prepared_at: at(0) };
  const asked: Asked = { kind: 'cooling', stage: ambient.name, profile, facts };
  return [
    ...cases,
    ...temperature(
      'cooling_ambient.to',
      ambient.to,
      (ofTenths, unit) => verdictOf(asked, [look(1, ofTenths, unit)]),
      { no: 'not_shown' },
    ),
    ...time(
      'cooling_ambient.within',
      ambient.within,
      (minutes) => verdictOf(asked, [far(minutes, freezing)]),
      'not_shown',
    ),
    ...lateBy('cooling_ambient.within', ambient.within, (minutes) =>
      verdictOf(asked, [far(minutes, boiling)]),
    ),
  ];
}

/** A method without a clock: its conditions are facts, typed in °F and inches. */
export function untimed({ figures }: Published, profile: Profile): Case[] {
  const { cooling_untimed: rule, cooling: stages } = figures;
  const [first] = stages;
  if (rule === null || first === undefined) return [];
  const answer = (foodClass: FoodClass, facts: Facts) =>
    verdictOf(
      {
        kind: 'cooling',
        stage: first.name,
        profile,
        class: foodClass,
        facts: { uncovered_protected: true, ...facts },
      },
      [],
    );
  const cold = 300;
  const thin = (covers: string, figure: number, at: (inches: number) => Verdict | undefined): Case[] =>
    [-1, 0, 1].map((step) => {
      const inches = (tenths(figure) + step) / 10;
      return {
        covers,
        what: `${inches} in`,
        expected: step <= 0 ? 'not_applicable' : 'not_shown',
        actual: at(inches),
      };
    });
  const air = around(rule.air.value, 'degF').map(
    (ofTenths): Case => ({
      covers: 'cooling_untimed.air.value.degF',
      what: `${ofTenths / 10} degF`,
      expected: keeps(rule.air, 'degF', ofTenths) ? 'not_applicable' : 'not_shown',
      actual: answer('poultry', { unit_air: ofTenths / 10, layer_in: 0.1 }),
    }),
  );
  return [
    ...air,
    ...thin('cooling_untimed.layer_in', rule.layer_in, (layer) =>
      answer('poultry', { unit_air: cold / 10, layer_in: layer }),
    ),
    ...thin('cooling_untimed.intact_in', rule.intact_in, (intact) =>
      answer('intact_roast', { unit_air: cold / 10, intact_in: intact }),
    ),
  ];
}
