import { describe, expect, test } from 'vitest';
import { fieldOf } from '#app/set-up/form/field-of.ts';
import { bodyWith, changeMeant, changeTyped, fieldsOf, foundOf } from '#app/set-up/limits/change-typed.ts';
import { changeableFigure } from '#lib/fold/changeable-figures.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { LimitsRole } from '#shared/entries/limits.ts';

const fda = profile('fda_2022');
const figureOf = (role: LimitsRole) => {
  const figure = fda && changeableFigure(fda, role);
  if (!fda || !figure) throw new Error(`no figure ${role}`);
  return { fda, figure };
};
/** The form of one figure with an amount typed, and perhaps a unit. */
function form(role: LimitsRole, amount: string, unit: 'degF' | 'degC' = 'degF') {
  const { fda: published, figure } = figureOf(role);
  const f = fieldsOf(figure);
  const typed = {
    ...changeTyped(figure, null, { unit, section: 'house limit', name: 'Ours' }),
    [f.amount]: amount,
  };
  return { figure, published, typed, found: foundOf(figure, typed, published) };
}

describe('while it is typed', () => {
  test.each<[LimitsRole, string, 'degF' | 'degC', string]>([
    ['hot_hold', '135.1', 'degF', 'stricter'],
    ['hot_hold', '135', 'degF', 'same'],
    ['hot_hold', '134,9', 'degF', 'looser'],
    ['hot_hold', '57.1', 'degC', 'stricter'],
    ['cold_hold', '42', 'degF', 'looser'],
    ['cold_hold', '40', 'degF', 'stricter'],
    ['total_within', '361', 'degF', 'looser'],
    ['total_within', '359', 'degF', 'stricter'],
    ['reheat_held', '14', 'degF', 'looser'],
    ['hot_hold_at_most', '600', 'degF', 'stricter'],
    ['hot_hold_roast', '', 'degF', 'stricter'],
  ])('%s %s %s is %s', (role, amount, unit, direction) => {
    expect(form(role, amount, unit).found?.direction).toBe(direction);
  });

  test.each(['', 'warm', '4000'])('“%s” says nothing yet', (amount) => {
    expect(form('hot_hold', amount).found).toBeNull();
  });

  test('both units are said, by hand: (140 − 32) × 5 / 9 = 60', () => {
    expect(form('hot_hold', '140').found?.both).toEqual({ degF: 140, degC: 60 });
    expect(form('total_within', '300').found?.both).toBeNull();
  });

  test('what is missing for a looser one finds its fields', () => {
    const { found, typed } = form('hot_hold', '130');
    const fields = (found?.problems ?? []).map(({ field }) => fieldOf(field, Object.keys(typed)));
    expect(fields).toEqual([
      'changes_hot_hold_authority',
      'changes_hot_hold_document',
      'changes_hot_hold_dated',
    ]);
  });
});

describe('what is sent', () => {
  const own = {
    limits: 'x',
    name: 'Ours',
    extends: 'fda_2022',
    changes: {
      reheat_held: { seconds: 20, section: 'house limit', authority: null, document: null, dated: null },
    },
    active: true,
  };

  test('blank grounds are null, a comma is a point', () => {
    const { figure, typed } = form('hot_hold', '140,5');
    expect(changeMeant(figure, typed)).toEqual({
      value: 140.5,
      unit: 'degF',
      section: 'house limit',
      authority: null,
      document: null,
      dated: null,
    });
  });

  test('a figure is laid beside those that stand, and taken away alone', () => {
    expect(Object.keys(bodyWith(own, 'hot_hold', { value: 140 }).changes)).toEqual([
      'reheat_held',
      'hot_hold',
    ]);
    expect(bodyWith(own, 'reheat_held', null).changes).toEqual({});
  });

  test('the form opens with the change as it stands', () => {
    const { figure } = figureOf('reheat_held');
    const typed = changeTyped(figure, own.changes.reheat_held, { unit: 'degF', section: '', name: 'Ours' });
    expect(typed.changes_reheat_held_seconds).toBe('20');
    expect(typed.changes_reheat_held_section).toBe('house limit');
  });
});
