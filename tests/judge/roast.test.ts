import { describe, expect, test } from 'vitest';
import type { Stages } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts } from '#lib/judge/record.ts';
import { roastCook } from '#lib/judge/roast.ts';
import { at, fda, reading, record } from './records.ts';

const cook = (facts: Facts, ...readings: ReturnType<typeof reading>[]): Stages =>
  judgeStep('cook', record(readings, { class: 'intact_roast', facts }), fda);

/** °F, °C, seconds: the chart of 3-401.11(B), typed from its published table. */
const chart = [
  [130, 54.4, 112 * 60],
  [131, 55.0, 89 * 60],
  [133, 56.1, 56 * 60],
  [135, 57.2, 36 * 60],
  [136, 57.8, 28 * 60],
  [138, 58.9, 18 * 60],
  [140, 60.0, 12 * 60],
  [142, 61.1, 8 * 60],
  [144, 62.2, 5 * 60],
  [145, 62.8, 4 * 60],
  [147, 63.9, 134],
  [149, 65.0, 85],
  [151, 66.1, 54],
  [153, 67.2, 34],
  [155, 68.3, 22],
  [157, 69.4, 14],
] as const;

describe.each(chart)('the row of %s °F, %s °C, %s s', (degF, degC, heldS) => {
  const verdict = (value: number, unit: 'degF' | 'degC', seconds: number) =>
    cook({}, reading(0, value, { unit, held_s: seconds })).temperature?.verdict;
  test.each([
    ['at the row for its time', degF, 'degF', heldS, 'kept'],
    ['a tenth over it', degF + 0.1, 'degF', heldS, 'kept'],
    ['a tenth under it', degF - 0.1, 'degF', heldS, 'not_shown'],
    ['a second too short', degF, 'degF', heldS - 1, 'not_shown'],
    ['in °C at the row', degC, 'degC', heldS, 'kept'],
    ['in °C a tenth under', Number((degC - 0.1).toFixed(1)), 'degC', heldS, 'not_shown'],
  ] as const)('%s', (_, value, unit, seconds, expected) => {
    expect(verdict(value, unit, seconds)).toBe(expected);
  });
});

describe('from 158 °F or 70 °C on no time is asked', () => {
  test.each([
    [157.9, 'degF', 'not_shown'],
    [158, 'degF', 'kept'],
    [158.1, 'degF', 'kept'],
    [69.9, 'degC', 'not_shown'],
    [70, 'degC', 'kept'],
  ] as const)('%s %s: %s', (value, unit, verdict) => {
    expect(cook({}, reading(0, value, { unit })).temperature?.verdict).toBe(verdict);
  });
});

describe('looks with the heat on count together while no gap is over 30 minutes', () => {
  const looks = (...minutes: number[]) =>
    cook({}, ...minutes.map((minute) => reading(minute, 135))).temperature;
  test.each([
    [[0, 30, 36], 'kept', ['heat_on']],
    [[0, 30, 35], 'not_shown', ['hold_time_not_noted']],
    [[0, 31, 40], 'not_shown', ['hold_time_not_noted']],
  ])('at %j min at 135 °F: %s', (minutes, verdict, reasons) => {
    expect(looks(...minutes)).toMatchObject({ verdict, reasons });
  });
});

describe('the oven line by kind and weight', () => {
  const rows: [Facts['oven'], number | null, number | null, string, string[]][] = [
    ['still_dry', 349.9, 9.9, 'broken', []],
    ['still_dry', 350, 9.9, 'kept', []],
    ['still_dry', 350.1, 9.9, 'kept', []],
    ['still_dry', 249.9, 10, 'broken', []],
    ['still_dry', 250, 10, 'kept', []],
    ['convection', 324.9, 9.9, 'broken', []],
    ['convection', 325, 9.9, 'kept', []],
    ['convection', 249.9, 10, 'broken', []],
    ['convection', 250, 10, 'kept', []],
    ['high_humidity', 250, 5, 'kept', []],
    ['high_humidity', 250.1, 5, 'broken', []],
    ['high_humidity', 249.9, 15, 'kept', []],
    ['pit', 249.9, 10, 'not_shown', ['disputed']],
    ['pit', 250, 10, 'kept', []],
    ['pit', 275, 9.9, 'not_shown', ['disputed']],
    ['still_dry', 300, null, 'not_shown', []],
    ['still_dry', 350, null, 'kept', []],
    ['still_dry', null, 12, 'not_shown', []],
    [null, 300, 12, 'not_shown', []],
  ];
  test.each(rows)('%s at %s °F with %s lb: %s %j', (oven, temperature, massLb, verdict, reasons) => {
    const stages = cook({ oven, oven_temp: temperature, mass_lb: massLb }, reading(0, 200));
    expect(stages.oven).toMatchObject({ verdict, reasons });
  });
});

describe('the allowance is the worse of oven and temperature', () => {
  const oven = { oven: 'still_dry', mass_lb: 12 } as const;
  test.each([
    [{ ...oven, oven_temp: 250 }, 200, 'kept'],
    [{ ...oven, oven_temp: 240 }, 200, 'broken'],
    [{ ...oven, oven_temp: null }, 200, 'not_shown'],
    [{ ...oven, oven_temp: 250 }, 120, 'not_shown'],
    [{ ...oven, oven_temp: 240 }, 120, 'broken'],
  ])('%j at %s °F: %s', (facts, value, verdict) => {
    expect(roastCook(cook(facts, reading(0, value)))).toBe(verdict);
  });
  test('a cook that ended below the lowest row is broken, and an old look proves nothing of the end', () => {
    const ended = (minutes: number) =>
      judgeStep(
        'cook',
        record([reading(0, 129.9)], { class: 'intact_roast', end: at(minutes), asOf: at(minutes) }),
        fda,
      ).temperature?.verdict;
    expect([ended(5), ended(5.1)]).toEqual(['broken', 'not_shown']);
  });
  test('a cook of another class, or in a microwave, says nothing of the allowance', () => {
    const poultry = judgeStep('cook', record([reading(0, 170)], { class: 'poultry' }), fda);
    expect(Object.keys(poultry)).toEqual(['temperature']);
    expect(roastCook(poultry)).toBeNull();
    expect(roastCook(cook({ method: 'microwave' }, reading(0, 170)))).toBeNull();
    expect(roastCook({})).toBeNull();
  });
});
