import { v7 } from 'uuid';
import { describe, expect, test } from 'vitest';
import { kinds } from '#shared/entries/entry.ts';
import {
  type StartingChoice,
  startingChoice,
  startingEquipment,
  startingFoods,
  startingPlans,
  startingProbes,
  startingThings,
} from '#shared/starting-values.ts';

const house = { unit: 'degF', language: 'en', newId: v7 } as const;
const everything: StartingChoice = {
  equipment: startingEquipment.map(({ key }) => key),
  probes: startingProbes.map(({ key }) => key),
  foods: startingFoods.map(({ key }) => key),
  plans: startingPlans.map(({ key }) => key),
};
const plansOf = (choice: StartingChoice) =>
  startingThings(choice, house).flatMap((thing) => (thing.kind === 'plan' ? [thing.body] : []));

describe('what a barbecue kitchen starts with', () => {
  test.each(['degF', 'degC'] as const)('each thing is what its kind of entry asks for, in %s', (unit) => {
    const things = startingThings(everything, { ...house, unit });
    expect(things).toHaveLength(16 + 4 + 12 + 7);
    for (const { kind, body } of things)
      expect(kinds[kind].body.safeParse(body).error?.issues).toBeUndefined();
  });
  test('names are written in the language of the kitchen', () => {
    const names = startingThings(everything, { ...house, language: 'es' }).map(
      ({ body }) => 'name' in body && body.name,
    );
    expect(names).toContain('Cuarto frío');
    expect(names).not.toContain('Walk-in');
  });
  test('the walk counts from 1 over what was chosen', () => {
    const things = startingThings({ ...startingChoice, equipment: ['walk_in', 'cabinet_2'] }, house);
    const order = things.flatMap((thing) =>
      thing.kind === 'equipment' ? [[thing.body.name, thing.body.order]] : [],
    );
    expect(order).toEqual([
      ['Cabinet 2', 1],
      ['Walk-in', 2],
    ]);
  });
  test('the plans are those of a usual house: two figures, or times after the start', () => {
    const figures = plansOf(everything).map((plan) => [
      plan.step,
      plan.every_min,
      plan.at_most_min,
      plan.checkpoints_min.join(' '),
    ]);
    expect(figures).toEqual([
      ['hot_hold', 120, 150, ''],
      ['hot_hold', 120, 150, ''],
      ['rest', 60, 120, ''],
      ['cold_hold', 120, 270, ''],
      ['cooling', null, null, '0 60 120 240 360'],
      ['reheat', 30, null, ''],
      ['probe_check', 1440, null, ''],
    ]);
  });
  test('a plan names the equipment that was chosen, by its id', () => {
    const things = startingThings({ ...everything, equipment: ['cabinet_1', 'oven'] }, house);
    const cabinet = things.find((thing) => thing.kind === 'equipment' && thing.body.name === 'Cabinet 1');
    const plan = things.find((thing) => thing.kind === 'plan' && thing.body.step === 'hot_hold');
    expect(plan?.kind === 'plan' && plan.body.equipment).toEqual([
      cabinet?.kind === 'equipment' ? cabinet.body.equipment : 'missing',
    ]);
  });
  test('a plan for equipment that nobody chose is left out: it would speak of every place', () => {
    const steps = plansOf({ ...everything, equipment: ['oven'] }).map(({ step }) => step);
    expect(steps).toEqual(['rest', 'cold_hold', 'cooling', 'reheat', 'probe_check']);
  });
  test('nothing chosen is nothing written', () => {
    expect(startingThings({ equipment: [], probes: [], foods: [], plans: [] }, house)).toEqual([]);
  });
});
