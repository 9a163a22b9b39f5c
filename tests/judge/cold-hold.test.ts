import { describe, expect, test } from 'vitest';
import { judgeStep } from '#lib/judge/judge.ts';
import type { JudgedReading } from '#lib/judge/record.ts';
import { at, fda, reading, record } from './records.ts';

const cold = (readings: readonly JudgedReading[], asked: Parameters<typeof record>[1] = {}) =>
  judgeStep('cold_hold', record(readings, asked), fda);
const warmest = { spot: 'warmest' } as const;

describe('at or below 41 °F, 5 °C (3-501.16(A)(2))', () => {
  test.each([
    [40.9, 'degF', 'kept'],
    [41, 'degF', 'kept'],
    [41.1, 'degF', 'broken'],
    [4.9, 'degC', 'kept'],
    [5, 'degC', 'kept'],
    [5.1, 'degC', 'broken'],
  ] as const)('%s %s: %s', (value, unit, verdict) => {
    expect(cold([reading(0, value, { ...warmest, unit })]).at_readings).toMatchObject({
      verdict,
      section: '3-501.16(A)(2)',
      limit: { value: 41, unit: 'degF', comparison: 'at_or_below' },
    });
  });
  test.each([
    [39, true],
    [38.9, false],
    [43, true],
    [43.1, false],
  ])('%s °F is close to the limit: %s', (value, isClose) => {
    const reasons = cold([reading(0, value, warmest)]).at_readings?.reasons ?? [];
    expect(reasons.includes('close_to_limit')).toBe(isClose);
  });
  test('of a typed and a corrected value the higher one counts', () => {
    const one = (correction: number) => cold([reading(0, 40, { ...warmest, correction })]).at_readings;
    expect(one(1.1)?.verdict).toBe('broken');
    expect(one(1)?.verdict).toBe('kept');
    expect(cold([reading(0, 41.1, { ...warmest, correction: -5 })]).at_readings?.verdict).toBe('broken');
  });
  test('no roast is held warmer, and no class', () => {
    const roast = { class: 'intact_roast', facts: { roast_cook: 'kept' } } as const;
    expect(cold([reading(0, 41.1, warmest)], roast).at_readings?.verdict).toBe('broken');
  });
});

describe('what the places of the food prove', () => {
  test.each([
    ['warmest', 'kept', []],
    ['edge', 'kept', ['spot_not_natural']],
    ['core', 'kept', ['spot_not_natural']],
    ['surface', 'kept', ['spot_not_natural']],
    [null, 'kept', ['spot_not_natural']],
    ['coldest', 'not_shown', ['coldest_only']],
    ['air', 'not_shown', ['air_only']],
  ] as const)('35 °F at %s: %s', (spot, verdict, reasons) => {
    expect(cold([reading(0, 35, { spot })]).at_readings).toMatchObject({ verdict, reasons });
  });
  test('a natural look within 5 minutes is enough, one later is not', () => {
    const pair = (minutes: number) =>
      cold([reading(0, 35), reading(minutes, 35, warmest)]).at_readings?.reasons;
    expect(pair(5)).toEqual([]);
    expect(pair(5 + 1 / 60)).toEqual(['spot_not_natural']);
  });
  test('a suspect reading can only break', () => {
    const one = (value: number) => cold([reading(0, value, { ...warmest, suspect: true })]).at_readings;
    expect(one(35)).toMatchObject({ verdict: 'not_shown', reasons: ['suspect_only'] });
    expect(one(50)).toMatchObject({ verdict: 'broken' });
  });
});

describe('how long it was above', () => {
  test('from the last good look of the place to the first after it; a cold core ends nothing', () => {
    const readings = [
      reading(0, 40, { spot: 'edge' }),
      reading(60, 45, { spot: 'edge' }),
      reading(90, 46, { spot: 'edge' }),
      reading(100, 38, { spot: 'core' }),
      reading(150, 39, { spot: 'edge' }),
    ];
    expect(cold(readings).at_readings).toMatchObject({
      first_bad: at(60),
      above_longest_min: 150,
      above_shortest_min: 30,
      rests_on: [1, 2],
    });
  });
  test('a cold warmest place ends every stretch', () => {
    const readings = [reading(0, 45, { spot: 'edge' }), reading(30, 39, warmest), reading(90, 39, warmest)];
    expect(cold(readings).at_readings).toMatchObject({ above_longest_min: 30, above_shortest_min: 0 });
    expect(cold(readings).at_readings?.below_longest_min).toBeUndefined();
  });
});

describe('between two looks', () => {
  const logger = (spot: 'warmest' | 'edge' | 'core', last = 10) =>
    cold(
      [0, 5, last].map((minute) => reading(minute, 38, { spot, source: 'logger' })),
      { start: at(0), end: at(last), asOf: at(last) },
    ).between_readings;
  test('a logger at the warmest place or the thin end sees it, with no gap over 5 minutes', () => {
    expect(logger('warmest')).toMatchObject({ verdict: 'kept', longest_gap_min: 5, open: false });
    expect(logger('edge')?.verdict).toBe('kept');
    expect(logger('core')?.verdict).toBe('not_shown');
    expect(logger('warmest', 10 + 1 / 60)?.verdict).toBe('not_shown');
  });
  test('the house plan counts its looks', () => {
    const plan = (until: number) =>
      cold([reading(0, 38, warmest)], { planIntervalMin: 240, asOf: at(until) }).house_plan_interval?.verdict;
    expect(plan(240)).toBe('kept');
    expect(plan(240 + 1 / 60)).toBe('broken');
  });
});

test('a profile without a figure says so', () => {
  const without = { ...fda, figures: { ...fda.figures, cold_hold: null } };
  expect(judgeStep('cold_hold', record([reading(0, 38)]), without).at_readings).toMatchObject({
    verdict: 'not_applicable',
    reasons: ['no_figure'],
  });
});
