import { describe, expect, test } from 'vitest';
import { offeredChoices, type Situation } from '#app/deviation/choices.ts';
import { stepName } from '#shared/entries/step-name.ts';

const house = { reheat_may_return: false, reheat_within_min: null };
const cook: Situation = {
  step: 'hot_hold',
  food: true,
  probe: false,
  section: '3-501.16(A)(1)',
  mayRelease: false,
  house,
  sinceLastGoodMin: 84,
  reheatedBefore: false,
  reheatedSince: false,
};
const shutOf = (situation: Situation, choice: string) =>
  offeredChoices(situation).find((offered) => offered.choice === choice)?.shut;

describe('throwing away is first and always open, to everybody', () => {
  test.each(
    [true, false].flatMap((mayRelease) => [...stepName.options, null].map((step) => ({ mayRelease, step }))),
  )('may release: $mayRelease, in $step', ({ mayRelease, step }) => {
    const worst = { ...cook, mayRelease, step, sinceLastGoodMin: null, reheatedBefore: true };
    expect(offeredChoices(worst)[0]).toEqual({ choice: 'discard', shut: null });
  });
});

describe('the house forbids by name what it has not allowed', () => {
  test('a cook may start a reheat as protection; it does not bring the food back', () => {
    expect(shutOf(cook, 'reheat_protect')).toBeNull();
    expect(shutOf(cook, 'reheat_and_return')).toMatchObject({ by: 'house', why: 'no_return' });
  });

  const allows = { ...house, reheat_may_return: true, reheat_within_min: 120 };
  test.each([
    { since: 119.9, shut: null, why: 'inside the time' },
    { since: 120, shut: null, why: 'exactly the time is inside' },
    { since: 120.1, shut: 'too_long', why: 'just over' },
    { since: null, shut: 'last_good_unknown', why: 'nobody knows when it was last good' },
  ])(
    'a house that lets a reheat return food within 120 min: $since min is $shut ($why)',
    ({ since, shut }) => {
      const found = shutOf({ ...cook, house: allows, sinceLastGoodMin: since }, 'reheat_and_return');
      expect(found === null ? null : found?.why).toBe(shut);
    },
  );

  test('food is reheated once, not twice', () => {
    const again = { ...cook, house: allows, reheatedBefore: true };
    expect(shutOf(again, 'reheat_and_return')).toMatchObject({ by: 'practice', why: 'once' });
    expect(shutOf(again, 'reheat_protect')).toMatchObject({ by: 'practice', why: 'once' });
  });

  test('a reheat that missed its time is not begun again: the section says so', () => {
    const missed = { ...cook, step: 'reheat' as const, section: '3-403.11(D)' };
    expect(shutOf(missed, 'reheat_protect')).toMatchObject({
      by: 'code',
      why: 'again',
      section: '3-403.11(D)',
    });
  });

  test('a cooling over its time shows the strict way, unless the house has said otherwise', () => {
    const cooling = { ...cook, step: 'cooling' as const, section: '3-501.14(A)(1)' };
    expect(shutOf(cooling, 'reheat_protect')).toMatchObject({ by: 'code', section: '3-501.14(A)(1)' });
    expect(shutOf({ ...cooling, house: allows }, 'reheat_protect')).toBeNull();
  });
});

describe('bringing food back is for the one who may', () => {
  test.each([true, false])('may release: %s', (mayRelease) => {
    const since = { ...cook, mayRelease, reheatedSince: true };
    for (const choice of ['release', 'reheat_done'])
      expect(shutOf(since, choice)).toEqual(
        mayRelease ? null : { by: 'house', why: 'manager_decides', section: null, values: {} },
      );
  });

  test('back after a reheat is offered once a reheat was begun, and then no second reheat', () => {
    expect(shutOf(cook, 'reheat_done')).toBeUndefined();
    expect(shutOf({ ...cook, reheatedSince: true }, 'reheat_protect')).toMatchObject({ why: 'once' });
  });
});

describe('what makes no sense is not offered at all', () => {
  const offered = (situation: Situation) => offeredChoices(situation).map((each) => each.choice);

  test('cold food is not reheated, and short cooking is cooked on', () => {
    expect(offered({ ...cook, step: 'cold_hold' })).not.toContain('reheat_protect');
    expect(offered({ ...cook, step: 'cook' })).toContain('recook');
    expect(offered(cook)).not.toContain('recook');
  });

  test('a thermometer is taken out of service; there is no food to throw away', () => {
    expect(offered({ ...cook, food: false, probe: true, step: null })).toEqual([
      'repair',
      'take_out_of_service',
      'retrain',
      'other',
    ]);
  });
});
