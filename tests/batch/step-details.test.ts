import { describe, expect, test } from 'vitest';
import { lastDayOf } from '#app/batch/date-mark-days.ts';
import { decimal, detailsOf, emptyForm, masses } from '#app/batch/step-details.ts';
import { stepDetails } from '#shared/entries/step.ts';
import { stepName } from '#shared/entries/step-name.ts';

const inF = { unit: 'degF', equipment: null } as const;

describe('a step holds what was said and nothing else', () => {
  test.each(stepName.options)('an untouched form adds nothing to %s', (step) => {
    expect(detailsOf(step, emptyForm, inF)).toEqual({});
  });

  test('a cooling: depth, cover and the air it stands in', () => {
    const form = { ...emptyForm, depthIn: '2,5', covered: 'loosely' as const, cooler: '37' };
    const details = detailsOf('cooling', form, inF);
    expect(stepDetails.safeParse(details).success).toBe(true);
    expect(details).toEqual({ pan_depth_in: 2.5, covered: 'loosely', cooler_F: 37 });
  });

  test('a kitchen in Celsius types its cooler in Celsius: 3 is 37.4 °F', () => {
    const details = detailsOf('cooling', { ...emptyForm, cooler: '3' }, { unit: 'degC', equipment: null });
    expect(details).toEqual({ cooler_F: 37.4 });
  });

  test('what was made at room warmth says when it was made', () => {
    const preparedAt = '2026-10-17T10:00:00Z';
    const form = { ...emptyForm, ingredients: 'ambient' as const, preparedAt };
    expect(detailsOf('cooling', form, inF)).toEqual({ ingredients: 'ambient', prepared_at: preparedAt });
    expect(detailsOf('cooling', { ...form, ingredients: 'cooked' }, inF)).toEqual({ ingredients: 'cooked' });
  });

  test('care with a microwave that nobody confirmed stays unknown, it is not denied', () => {
    const form = { ...emptyForm, route: 'microwave' as const, careCovered: true };
    expect(detailsOf('reheat', form, inF)).toEqual({ route: 'microwave', covered: true });
    const all = detailsOf('reheat', { ...form, careStirred: true, careStood: true }, inF);
    expect(all).toEqual({ route: 'microwave', covered: true, stirred: true, stood_s: 120 });
  });

  test('a cook in a pit is a pit, whatever was tapped before', () => {
    const form = { ...emptyForm, oven: 'convection' as const, massLb: '14.2 13.8' };
    expect(detailsOf('cook', form, { unit: 'degF', equipment: 'pit' })).toEqual({
      oven: 'pit',
      raw_mass_lb: [14.2, 13.8],
    });
  });

  test('time instead of temperature: way, procedure and mark, each as it was said; the mark with its time', () => {
    const form = { ...emptyForm, timeMode: '6h' as const, procedure: true, marked: true };
    const outBy = Date.parse('2026-10-17T20:32:00Z');
    const details = detailsOf('time_control', form, { ...inF, outBy });
    expect(stepDetails.safeParse(details).success).toBe(true);
    expect(details).toEqual({
      mode: '6h',
      written_procedure: true,
      marked: true,
      marked_discard_at: '2026-10-17T20:32:00Z',
    });
    const not = { ...emptyForm, procedure: false, marked: false };
    expect(detailsOf('time_control', not, { ...inF, outBy })).toEqual({
      written_procedure: false,
      marked: false,
    });
  });

  test('food for the cold: ready or raw, its first day and its last, the 22nd for the 16th', () => {
    const form = { ...emptyForm, ready: true, dayOne: '2026-10-16' };
    expect(detailsOf('cold_hold', form, { ...inF, days: 7 })).toEqual({
      ready_to_eat: true,
      date_mark: '2026-10-16',
      discard_by: '2026-10-22',
    });
    expect(detailsOf('cold_hold', { ...form, ready: false }, { ...inF, days: 7 })).toEqual({
      ready_to_eat: false,
    });
    expect(detailsOf('cold_hold', { ...form, dayOne: 'monday' }, { ...inF, days: 7 })).toEqual({
      ready_to_eat: true,
    });
  });

  test.each([
    ['2026-10-26', 7, '2026-11-01'], // over the end of a month
    ['2028-02-26', 7, '2028-03-03'], // a leap year: 26, 27, 28, 29, 1, 2, 3
    ['2026-10-16', 1, '2026-10-16'],
    ['2026-13-40', 7, null],
    ['', 7, null],
  ])('from %s, %s days: the last is %s', (first, days, last) => {
    expect(lastDayOf(first, days)).toBe(last);
  });

  test('answers to another step are left out', () => {
    const form = { ...emptyForm, reason: 'sold' as const, depthIn: '2', route: 'roast' as const };
    expect(detailsOf('hot_hold', { ...form, text: ' top shelf ' }, inF)).toEqual({ text: 'top shelf' });
    expect(detailsOf('gone', form, inF)).toEqual({ reason: 'sold' });
  });
});

test.each([
  ['', null],
  [' ', null],
  ['0', 0],
  ['41,5', 41.5],
  ['-2.0', -2],
  ['4 1', null],
  ['1e3', null],
  ['four', null],
])('typed "%s" is the number %s: a blank is never 0', (typed, value) => {
  expect(decimal(typed)).toBe(value);
});

test.each([
  ['14.2 13,8; 15', [14.2, 13.8, 15]],
  ['', null],
  ['14.2 heavy', null],
  ['14 0', null],
])('weights "%s" are %s', (typed, value) => {
  expect(masses(typed)).toEqual(value);
});

test.each([
  ['4 8 14', [4, 8, 14]],
  ['4,5', [4.5]],
  ['4 8 14 20', undefined], // a piece has three sides
  ['four', undefined],
  ['', undefined],
])('the size "%s" is written with a hold and a rest as %s', (typed, sides) => {
  const form = { ...emptyForm, pieceIn: typed };
  expect(detailsOf('hot_hold', form, inF).piece_in).toEqual(sides);
  expect(detailsOf('rest', form, inF).piece_in).toEqual(sides);
  expect(detailsOf('cooling', form, inF).piece_in).toBeUndefined();
});
