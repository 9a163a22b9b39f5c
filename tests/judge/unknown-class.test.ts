import { describe, expect, test } from 'vitest';
import { classRule } from '#lib/judge/class-rule.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { RuleKind } from '#lib/judge/record.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { type FoodClass, foodClass } from '#shared/entries/food.ts';
import { at, fda, reading, record, type Told } from './records.ts';

const verdict = (kind: RuleKind, food: FoodClass, value: number, told: Told = {}, facts = {}) => {
  const stages = judgeStep(
    kind,
    record([reading(0, value, told)], { class: food, facts, end: at(1), asOf: at(1) }),
    fda,
  );
  return (stages.temperature ?? stages.at_readings)?.verdict;
};

describe('a food of no class is read on the strictest rule', () => {
  // 3-401.11(A)(3) is the highest of the cooking figures: 165 °F. 155 °F for 17 s would be enough for ground meat.
  test.each([
    [165, 'kept'],
    [164.9, 'broken'],
    [158, 'broken'],
    [145, 'broken'],
  ])('cooked to %s °F, looked at to the end: %s', (value, expected) => {
    expect(verdict('cook', 'unknown', value, { held_s: 200 })).toBe(expected);
  });
  test('155 °F for 17 s is enough for ground meat and not for what nobody knows', () => {
    expect(verdict('cook', 'ground', 155, { held_s: 17 })).toBe('kept');
    expect(verdict('cook', 'unknown', 155, { held_s: 17 })).not.toBe('kept');
  });
  test('no allowance of a roast: 132 °F in the cabinet is out of 3-501.16(A)(1) even if somebody says it is a roast cook', () => {
    const told = { spot: 'edge' } as const;
    expect(verdict('hot_hold', 'intact_roast', 132, told, { roast_cook: 'kept' })).toBe('kept');
    expect(verdict('hot_hold', 'unknown', 132, told, { roast_cook: 'kept' })).toBe('broken');
  });
  test('reheated as a roast it is still asked for 165 °F: 3-403.11(A)', () => {
    const told = { held_s: 3 * 3600 };
    expect(verdict('reheat', 'unknown', 131, told, { route: 'roast', oven: 'still_dry' })).not.toBe('kept');
  });

  // What is kept for it is kept for every class that the profile has a row for: its value is no lower.
  test.each(
    profileIds.flatMap((id) => {
      const { unknown } = profile(id)?.figures.cook ?? {};
      return unknown === undefined ? [] : [[id, unknown.rows] as const];
    }),
  )('%s: no class of it asks a higher temperature than the food of no class', (id, rows) => {
    const charts = Object.values(profile(id)?.figures.cook ?? {});
    const lowest = Math.min(...rows.map(({ degF }) => degF));
    for (const chart of charts)
      expect(Math.min(...chart.rows.map(({ degF }) => degF))).toBeLessThanOrEqual(lowest);
  });
});

describe('what a class decides, as the set-up says it', () => {
  test('a whole roast: the chart from 130 °F, 135 °F in the cabinet, 130 °F where its cook is shown', () => {
    expect(classRule('intact_roast', fda)).toMatchObject({
      cook: { by: 'roast', from: { degF: 130 }, cited: { section: '3-401.11(B)' } },
      hold: { degF: 135, degC: 57, cited: { section: '3-501.16(A)(1)' } },
      holdRoast: { degF: 130, degC: 54 },
    });
  });
  test.each([
    ['injected_or_tenderized', '3-401.11(A)(2)', 145],
    ['pork_whole', '3-401.11(A)(1)', 145],
    ['poultry', '3-401.11(A)(3)', 165],
    ['plant', '3-401.13', 135],
    ['unknown', '3-401.11(A)(3)', 165],
  ] as const)('%s: %s from %s °F', (food, section, lowest) => {
    const { cook, holdRoast } = classRule(food, fda);
    expect(cook).toMatchObject({ by: 'rows', cited: { section } });
    expect(cook.by === 'rows' && cook.rows[0]?.degF).toBe(lowest);
    expect(holdRoast).toBeNull();
  });
  test('what was cooked before has no cooking figure', () => {
    for (const food of ['pulled_or_chopped', 'sausage_cooked', 'sauce', 'dairy_side'] as const)
      expect(classRule(food, fda)).toMatchObject({ cook: { by: 'none' }, hold: { degF: 135 } });
  });
  test('every class of every profile has an answer', () => {
    for (const id of profileIds) {
      const known = profile(id);
      if (known === null) throw new Error(id);
      for (const food of foodClass.options) expect(classRule(food, known).cook.by).toMatch(/roast|rows|none/);
    }
  });
});
