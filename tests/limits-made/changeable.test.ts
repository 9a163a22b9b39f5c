import { describe, expect, test } from 'vitest';
import { changeableFigure, changeableFigures } from '#lib/fold/changeable-figures.ts';
import { directionOf } from '#lib/fold/limits-direction.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { type LimitsChanges, type LimitsRole, limitsRoles } from '#shared/entries/limits.ts';

const house = { section: 'house limit', authority: null, document: null, dated: null };
const known = (id: string): Profile => {
  const found = profile(id);
  if (found === null) throw new Error(`no profile ${id}`);
  return found;
};

/** Some change of a role: only whether it is offered is asked of it. */
function some(role: LimitsRole): NonNullable<LimitsChanges[LimitsRole]> {
  if (role === 'hot_hold_roast') return { off: true, ...house };
  if (role === 'reheat_held') return { seconds: 20, ...house };
  return role.endsWith('within') || role === 'hot_hold_at_most' || role === 'record_hot_every'
    ? { minutes: 30, ...house }
    : { value: 137, unit: 'degF', ...house };
}

describe('the figures that a kitchen can set itself', () => {
  test('are those in which a change has a direction, in every profile', () => {
    for (const id of profileIds)
      for (const role of limitsRoles) {
        const offered = directionOf(role, some(role) as never, known(id)) !== 'not_offered';
        expect([id, role, changeableFigure(known(id), role) !== null]).toEqual([id, role, offered]);
      }
  });

  test('carry what is published: FDA holds at 135 °F, cools to 70 °F in 120 min, reheats to 165 °F for 15 s', () => {
    const by = new Map(changeableFigures(known('fda_2022')).map((one) => [one.role, one]));
    expect(by.get('hot_hold')?.degrees).toMatchObject({ value: { degF: 135 }, section: '3-501.16(A)(1)' });
    expect(by.get('stage_1_to')?.degrees?.value.degF).toBe(70);
    expect(by.get('stage_1_within')?.time?.minutes).toBe(120);
    expect(by.get('reheat_held')).toMatchObject({ seconds: 15, degrees: { value: { degF: 165 } } });
    expect(by.get('hot_hold_at_most')?.time).toBeNull();
  });

  test('of a place without figures are those that a house can add', () => {
    expect(changeableFigures(known('eu')).map(({ role }) => role)).toEqual([
      'hot_hold',
      'hot_hold_at_most',
      'record_hot_every',
      'cold_hold',
    ]);
  });
});
