import { describe, expect, it, test } from 'vitest';
import type { Reason, Stage, StageName } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, StepRecord } from '#lib/judge/record.ts';
import { at, fda, reading, record } from './records.ts';

const stage = (one: StepRecord, name: StageName): Stage => {
  const found = judgeStep('reheat', one, fda)[name];
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const care = { covered: true, stirred: true, stood_s: 120 };

describe('the target of each route, in both units (3-403.11(A) to (C))', () => {
  const rows: [Facts['route'], number, 'degF' | 'degC', Stage['verdict']][] = [
    ['conventional', 164.9, 'degF', 'broken'],
    ['conventional', 165, 'degF', 'kept'],
    ['conventional', 165.1, 'degF', 'kept'],
    ['conventional', 73.9, 'degC', 'broken'],
    ['conventional', 74, 'degC', 'kept'],
    ['conventional', 74.1, 'degC', 'kept'],
    ['microwave', 164.9, 'degF', 'broken'],
    ['microwave', 165, 'degF', 'kept'],
    ['microwave', 73.9, 'degC', 'broken'],
    ['microwave', 74, 'degC', 'kept'],
    ['commercial', 134.9, 'degF', 'broken'],
    ['commercial', 135, 'degF', 'kept'],
    ['commercial', 135.1, 'degF', 'kept'],
    ['commercial', 56.9, 'degC', 'broken'],
    ['commercial', 57, 'degC', 'kept'],
    [undefined, 164.9, 'degF', 'broken'],
    [undefined, 165, 'degF', 'kept'],
  ];
  test.each(rows)('%s at %s %s when it ended: %s', (route, value, unit, verdict) => {
    const one = record([reading(0, 40), reading(60, value, { unit, held_s: 15 })], {
      end: at(60),
      facts: { route, ...care },
    });
    expect(stage(one, 'temperature').verdict).toBe(verdict);
  });
});

describe('seconds are demanded by the conventional route only', () => {
  test.each([
    ['conventional', 14, 'not_shown'],
    ['conventional', 15, 'kept'],
    ['conventional', 16, 'kept'],
    ['conventional', null, 'not_shown'],
    ['microwave', null, 'kept'],
    ['commercial', null, 'kept'],
  ] as const)('%s, held %s s: %s', (route, heldS, verdict) => {
    const one = record([reading(60, 170, { held_s: heldS })], { facts: { route, ...care } });
    expect(stage(one, 'temperature').verdict).toBe(verdict);
  });
  test.each([
    [14, 'not_shown'],
    [15, 'kept'],
    [300, 'kept'],
    [301, 'not_shown'],
  ])('two looks %s s apart: %s', (seconds, verdict) => {
    const one = record([reading(60, 170), reading(60 + seconds / 60, 171)]);
    expect(stage(one, 'temperature').verdict).toBe(verdict);
  });
});

describe('a microwave asks for care (3-403.11(B))', () => {
  test.each([
    [{ ...care }, 'kept'],
    [{ ...care, stood_s: 119 }, 'broken'],
    [{ ...care, stood_s: 121 }, 'kept'],
    [{ ...care, covered: false }, 'broken'],
    [{ ...care, stirred: false }, 'broken'],
    [{ ...care, stirred: null }, 'not_shown'],
    [{ covered: true }, 'not_shown'],
  ])('%j: %s', (facts, verdict) => {
    const one = record([reading(5, 170, { spot: 'coldest' })], { facts: { route: 'microwave', ...facts } });
    expect(stage(one, 'temperature').verdict).toBe(verdict);
  });
});

describe('two hours from 41 °F or 5 °C to the target (3-403.11(D))', () => {
  const time = (start: number, unit: 'degF' | 'degC', minutes: number) =>
    stage(record([reading(0, start, { unit }), reading(minutes, 170, { held_s: 15 })]), 'time').verdict;
  test.each([
    [40.9, 'degF', 120, 'kept'],
    [41, 'degF', 120, 'kept'],
    [41.1, 'degF', 120, 'not_shown'],
    [4.9, 'degC', 120, 'kept'],
    [5, 'degC', 120, 'kept'],
    [5.1, 'degC', 120, 'not_shown'],
    [40, 'degF', 119, 'kept'],
    [40, 'degF', 121, 'not_shown'],
  ] as const)('from %s %s in %s min: %s', (start, unit, minutes, verdict) => {
    expect(time(start, unit, minutes)).toBe(verdict);
  });
  test.each([
    [119, 'not_shown'],
    [120, 'broken'],
    [121, 'broken'],
  ])('above 41 °F at first, still below the target after %s min: %s', (minutes, verdict) => {
    const one = record([reading(0, 42), reading(minutes, 160)]);
    expect(stage(one, 'time').verdict).toBe(verdict);
  });
  it('does not name the roast route', () => {
    const one = record([reading(0, 40), reading(200, 160)], {
      class: 'intact_roast',
      facts: { route: 'roast' },
    });
    expect(stage(one, 'time')).toMatchObject({ verdict: 'not_applicable', reasons: ['no_figure'] });
  });
  it('sees the last look before the step', () => {
    const one = record([reading(-30, 38), reading(0, 60), reading(89, 170, { held_s: 15 })], {
      start: at(0),
    });
    expect(stage(one, 'time')).toMatchObject({ verdict: 'kept', longest_min: 119, deadline: at(90) });
  });
});

describe('each reason has a record that gives it', () => {
  const rows: [Reason, StepRecord][] = [
    ['no_reading', record([], { start: at(0), asOf: at(10) })],
    ['air_only', record([reading(0, 300, { spot: 'air' })])],
    ['not_reached', record([reading(0, 100)])],
    ['hold_time_not_noted', record([reading(0, 170)])],
    ['spot_not_natural', record([reading(0, 170, { spot: null, held_s: 15 })])],
    ['close_to_limit', record([reading(0, 166, { held_s: 15 })])],
    [
      'microwave_care_unknown',
      record([reading(0, 170)], { facts: { route: 'microwave', covered: true, stirred: true } }),
    ],
    ['no_figure', record([reading(0, 100)], { facts: { route: 'immediate' } })],
  ];
  test.each(rows)('temperature: %s', (reason, one) =>
    expect(stage(one, 'temperature').reasons).toEqual([reason]),
  );

  const suspects: [Reason, StepRecord][] = [
    ['suspect_only', record([reading(0, 170, { held_s: 15, suspect: true })])],
    ['suspect_reading', record([reading(0, 100, { suspect: true }), reading(9, 170, { held_s: 15 })])],
  ];
  test.each(suspects)('temperature, among others: %s', (reason, one) =>
    expect(stage(one, 'temperature').reasons).toContain(reason),
  );
});

describe('the roast route is for a roast', () => {
  it('and a food of another class is judged by the stricter conventional one', () => {
    const one = record([reading(0, 158)], { class: 'poultry', facts: { route: 'roast' } });
    expect(stage(one, 'temperature')).toMatchObject({ verdict: 'not_shown', section: '3-403.11(A)' });
  });
});
