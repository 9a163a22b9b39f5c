import { describe, expect, test } from 'vitest';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts } from '#lib/judge/record.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { at, fda, reading, record, type Told } from './records.ts';

const looked = (food: FoodClass, value: number, told: Told = {}, facts: Facts = {}) =>
  judgeStep('cook', record([reading(0, value, told)], { class: food, facts, end: at(1), asOf: at(1) }), fda)
    .temperature;

/** Class, °F, °C, seconds (0 = none asked), section: 3-401.11(A), .13, typed from the published text. */
const rows = [
  ['beef_whole', 145, 63, 15, '3-401.11(A)(1)'],
  ['pork_whole', 145, 63, 15, '3-401.11(A)(1)'],
  ['fish', 145, 63, 15, '3-401.11(A)(1)'],
  ['ground', 145, 63, 180, '3-401.11(A)(2)'],
  ['ground', 150, 66, 60, '3-401.11(A)(2)'],
  ['ground', 155, 68, 17, '3-401.11(A)(2)'],
  ['ground', 158, 70, 0, '3-401.11(A)(2)'],
  ['sausage_raw', 155, 68, 17, '3-401.11(A)(2)'],
  ['injected_or_tenderized', 155, 68, 17, '3-401.11(A)(2)'],
  ['egg', 155, 68, 17, '3-401.11(A)(2)'],
  ['poultry', 165, 74, 0, '3-401.11(A)(3)'],
  ['unknown', 165, 74, 0, '3-401.11(A)(3)'],
  ['plant', 135, 57, 0, '3-401.13'],
] as const;

describe.each(rows)('%s: the row of %s °F, %s °C, %s s', (food, degF, degC, heldS, section) => {
  const held = { held_s: heldS };
  test.each([
    ['at the row', degF, { ...held }, 'kept'],
    ['a tenth above', degF + 0.1, { ...held }, 'kept'],
    ['in °C at the row', degC, { ...held, unit: 'degC' }, 'kept'],
    ['in °C a tenth above', degC + 0.1, { ...held, unit: 'degC' }, 'kept'],
  ] as const)('%s: kept', (_, value, told, verdict) => {
    expect(looked(food, value, told)).toMatchObject({ verdict, section, reasons: [] });
  });
  test.each([
    ['°F', Number((degF - 0.1).toFixed(1)), 'degF'],
    ['°C', Number((degC - 0.1).toFixed(1)), 'degC'],
  ] as const)('a tenth under it in %s is not the row', (_, value, unit) => {
    expect(looked(food, value, { ...held, unit })?.verdict).not.toBe('kept');
  });
  if (heldS > 0)
    test('a second too short, and seconds that nobody noted', () => {
      expect(looked(food, degF, { held_s: heldS - 1 })).toMatchObject({
        verdict: 'not_shown',
        reasons: ['not_reached'],
      });
      expect(looked(food, degF)).toMatchObject({ verdict: 'not_shown', reasons: ['hold_time_not_noted'] });
    });
});

describe('the end of a cook', () => {
  test('below the lowest row, looked at no more than 5 minutes before the end, is broken', () => {
    const end = (minutes: number) =>
      judgeStep('cook', record([reading(0, 144.9)], { class: 'ground', end: at(minutes), asOf: at(60) }), fda)
        .temperature;
    expect(end(5)).toMatchObject({ verdict: 'broken', open: false, next: { action: 'stop_and_tag' } });
    expect(end(5 + 1 / 60)).toMatchObject({ verdict: 'not_shown', reasons: ['not_reached'], open: false });
  });
  test('an end that is not seen yet breaks nothing, and the cook is open', () => {
    const seen = record([reading(0, 100)], { class: 'poultry', end: at(3), asOf: at(2) });
    expect(judgeStep('cook', seen, fda).temperature).toMatchObject({ verdict: 'not_shown', open: true });
  });
  test('nobody looked, or only at the air', () => {
    const air = record([reading(0, 225, { spot: 'air' })], { class: 'poultry' });
    expect(judgeStep('cook', record([], { class: 'poultry' }), fda).temperature?.reasons).toEqual([
      'no_reading',
    ]);
    expect(judgeStep('cook', air, fda).temperature?.reasons).toEqual(['air_only']);
  });
});

describe('looks at the row with the heat on', () => {
  const run = (gap: number, length: number) =>
    judgeStep(
      'cook',
      record(
        [reading(0, 145), reading(gap, 145), reading(length, 145)].filter(
          (one, place, all) => all.findIndex((other) => other.at === one.at) === place,
        ),
        { class: 'ground' },
      ),
      fda,
    ).temperature;
  test('from the first to the last the time of the row, no gap over 30 minutes', () => {
    expect(run(3, 3)).toMatchObject({ verdict: 'kept', reasons: ['heat_on'] });
    expect(run(2.99, 2.99)?.verdict).toBe('not_shown');
    expect(run(30, 30)).toMatchObject({ verdict: 'kept', reasons: ['heat_on'] });
    expect(run(31, 31)?.verdict).toBe('not_shown');
  });
  test('a look below ends the run', () => {
    const readings = [reading(0, 145), reading(2, 144), reading(4, 145)];
    expect(judgeStep('cook', record(readings, { class: 'ground' }), fda).temperature?.verdict).toBe(
      'not_shown',
    );
  });
});

describe('a cook in a microwave', () => {
  const care = { method: 'microwave', covered: true, stirred: true, stood_s: 120 };
  test.each([
    ['with all its care', {}, 'kept', []],
    ['stood a second less', { stood_s: 119 }, 'broken', []],
    ['not covered', { covered: false }, 'broken', []],
    ['not stirred', { stirred: false }, 'broken', []],
    ['covering not noted', { covered: null }, 'not_shown', ['microwave_care_unknown']],
    ['standing not noted', { stood_s: null }, 'not_shown', ['microwave_care_unknown']],
  ] as const)('%s: %s', (_, facts, verdict, reasons) => {
    expect(looked('pork_whole', 165, { spot: 'coldest' }, { ...care, ...facts })).toMatchObject({
      verdict,
      reasons,
      section: '3-401.12',
    });
  });
  test('the target counts for every class: a plant at 164.9 is not shown', () => {
    expect(looked('plant', 164.9, {}, care)?.verdict).toBe('broken');
  });
});

describe('what was cooked before has no figure', () => {
  test.each(['sausage_cooked', 'pulled_or_chopped', 'sauce', 'dairy_side'] as const)('%s', (food) => {
    expect(looked(food, 100)).toMatchObject({ verdict: 'not_applicable', reasons: ['no_figure'] });
  });
});

test('the edition of 2013 asks 15 s of poultry', () => {
  const before = profile('fda_2013');
  const bird = (held_s: number | null) =>
    record([reading(0, 165, { held_s })], { class: 'poultry', end: at(1), asOf: at(1) });
  if (before === null) throw new Error('fda_2013 is missing');
  expect(judgeStep('cook', bird(14), before).temperature?.verdict).toBe('not_shown');
  expect(judgeStep('cook', bird(15), before).temperature?.verdict).toBe('kept');
});

test('two pieces: the worst counts, and a piece that nobody read is said', () => {
  const two = [reading(0, 166, { piece: 1 }), reading(1, 160, { piece: 2 })];
  const cook = (pieces: number) =>
    judgeStep('cook', record(two, { class: 'poultry', pieces, end: at(2), asOf: at(2) }), fda).temperature;
  expect(cook(2)).toMatchObject({ verdict: 'broken', pieces_read: 2, rests_on: [1] });
  expect(cook(3)?.reasons).toEqual(['some_pieces_unread']);
});
