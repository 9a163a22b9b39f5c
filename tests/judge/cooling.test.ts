import { describe, expect, it, test } from 'vitest';
import type { Reason, Stage, StageName } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { StepRecord } from '#lib/judge/record.ts';
import { profile } from '#lib/limits/profiles.ts';
import { at, fda, reading, record } from './records.ts';

const stage = (one: StepRecord, name: StageName): Stage => {
  const found = judgeStep('cooling', one, fda)[name];
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe('the start is shown by a look at or above 135 °F or 57 °C (3-501.14(A))', () => {
  test.each([
    { value: 134.9, unit: 'degF', verdict: 'not_shown', why: 'one tenth under: nobody saw it start' },
    { value: 135, unit: 'degF', verdict: 'kept', why: 'exactly' },
    { value: 135.1, unit: 'degF', verdict: 'kept', why: 'one tenth over' },
    { value: 56.9, unit: 'degC', verdict: 'not_shown', why: 'one tenth under' },
    { value: 57, unit: 'degC', verdict: 'kept', why: 'exactly' },
    { value: 57.1, unit: 'degC', verdict: 'kept', why: 'one tenth over' },
  ] as const)('$value $unit: $verdict, $why', ({ value, unit, verdict }) => {
    expect(stage(record([reading(0, value, { unit }), reading(110, 60)]), 'stage_1').verdict).toBe(verdict);
  });
});

describe('the end is shown by a look at or below the figure to reach', () => {
  test.each([
    { name: 'stage_1', value: 70.1, unit: 'degF', verdict: 'not_shown' },
    { name: 'stage_1', value: 70, unit: 'degF', verdict: 'kept' },
    { name: 'stage_1', value: 69.9, unit: 'degF', verdict: 'kept' },
    { name: 'stage_1', value: 21.1, unit: 'degC', verdict: 'not_shown' },
    { name: 'stage_1', value: 21, unit: 'degC', verdict: 'kept' },
    { name: 'stage_1', value: 20.9, unit: 'degC', verdict: 'kept' },
    { name: 'total', value: 41.1, unit: 'degF', verdict: 'not_shown' },
    { name: 'total', value: 41, unit: 'degF', verdict: 'kept' },
    { name: 'total', value: 40.9, unit: 'degF', verdict: 'kept' },
    { name: 'total', value: 5.1, unit: 'degC', verdict: 'not_shown' },
    { name: 'total', value: 5, unit: 'degC', verdict: 'kept' },
    { name: 'total', value: 4.9, unit: 'degC', verdict: 'kept' },
  ] as const)('$name at $value $unit: $verdict', ({ name, value, unit, verdict }) => {
    expect(stage(record([reading(0, 140), reading(100, value, { unit })]), name).verdict).toBe(verdict);
  });
});

describe('the whole limit keeps, one minute more does not', () => {
  test.each([
    { name: 'stage_1', value: 69, minutes: 119, verdict: 'kept' },
    { name: 'stage_1', value: 69, minutes: 120, verdict: 'kept' },
    { name: 'stage_1', value: 69, minutes: 121, verdict: 'not_shown' },
    { name: 'total', value: 40, minutes: 359, verdict: 'kept' },
    { name: 'total', value: 40, minutes: 360, verdict: 'kept' },
    { name: 'total', value: 40, minutes: 361, verdict: 'not_shown' },
  ] as const)('$name in $minutes min: $verdict', ({ name, value, minutes, verdict }) => {
    expect(stage(record([reading(0, 140), reading(minutes, value)]), name).verdict).toBe(verdict);
  });
});

describe('still above when the whole limit is over is broken: it had left the start before', () => {
  test.each([
    { name: 'stage_1', minutes: 119, verdict: 'not_shown' },
    { name: 'stage_1', minutes: 120, verdict: 'broken' },
    { name: 'stage_1', minutes: 121, verdict: 'broken' },
    { name: 'total', minutes: 359, verdict: 'not_shown' },
    { name: 'total', minutes: 360, verdict: 'broken' },
    { name: 'total', minutes: 361, verdict: 'broken' },
  ] as const)('$name after $minutes min: $verdict', ({ name, minutes, verdict }) => {
    expect(stage(record([reading(0, 134), reading(minutes, 80)]), name).verdict).toBe(verdict);
  });
});

describe('food of room-warm ingredients counts from when it was made (3-501.14(B))', () => {
  const made = (minutes: number, value: number, unit: 'degF' | 'degC' = 'degF') =>
    stage(
      record([reading(minutes, value, { unit })], { facts: { ingredients: 'ambient', prepared_at: at(0) } }),
      'ambient_total',
    ).verdict;
  test.each([
    [239, 41, 'degF', 'kept'],
    [240, 41, 'degF', 'kept'],
    [241, 41, 'degF', 'not_shown'],
    [239, 41.1, 'degF', 'not_shown'],
    [240, 41.1, 'degF', 'broken'],
    [240, 5, 'degC', 'kept'],
    [240, 5.1, 'degC', 'broken'],
  ] as const)('after %s min at %s %s: %s', (minutes, value, unit, verdict) => {
    expect(made(minutes, value, unit)).toBe(verdict);
  });
  it('leaves out what was read before it was made', () => {
    const facts = { ingredients: 'ambient', prepared_at: at(0) } as const;
    expect(stage(record([reading(-10, 90), reading(200, 40)], { facts }), 'ambient_total')).toMatchObject({
      verdict: 'kept',
      longest_min: 200,
      shortest_min: 0,
    });
  });
});

describe('each reason has a record that gives it', () => {
  const rows: [Reason, StepRecord][] = [
    ['no_reading', record([], { start: at(0), asOf: at(10) })],
    ['air_only', record([reading(0, 40, { spot: 'air' })])],
    ['not_reached', record([reading(0, 150), reading(60, 90)])],
    ['start_unknown', record([reading(0, 120), reading(60, 60)])],
    ['brackets_too_wide', record([reading(0, 150), reading(150, 60)])],
    ['spot_not_natural', record([reading(0, 150, { spot: 'edge' }), reading(60, 60)])],
  ];
  test.each(rows)('%s', (reason, one) => expect(stage(one, 'stage_1').reasons).toEqual([reason]));

  const among: [Reason, StepRecord][] = [
    ['rose_again', record([reading(0, 150), reading(40, 60), reading(50, 80), reading(60, 60)])],
    ['suspect_reading', record([reading(0, 150), reading(10, 120, { suspect: true }), reading(60, 60)])],
    ['suspect_only', record([reading(0, 150, { suspect: true })])],
    ['close_to_limit', record([reading(0, 137), reading(60, 60)])],
    ['implausible_jump', record([reading(0, 150), reading(9, 89.9), reading(60, 60)])],
    [
      'some_pieces_unread',
      record([reading(0, 150, { piece: 1 }), reading(60, 60, { piece: 1 })], { pieces: 2 }),
    ],
    [
      'disputed',
      record([reading(-10, 132), reading(0, 131), reading(60, 60)], {
        start: at(0),
        class: 'intact_roast',
        facts: { roast_cook: 'not_shown' },
      }),
    ],
  ];
  test.each(among)('%s, among others', (reason, one) =>
    expect(stage(one, 'stage_1').reasons).toContain(reason),
  );
});

describe('a jump is more than 60 °F or 33 °C of one spot in less than 10 minutes', () => {
  const jumps = (...readings: ReturnType<typeof reading>[]) =>
    stage(record([...readings, reading(90, 60)]), 'stage_1').reasons.includes('implausible_jump');
  test.each([
    ['exactly 60 °F', jumps(reading(0, 150.1), reading(9, 90.1)), false],
    ['a tenth more', jumps(reading(0, 150.1), reading(9, 90)), true],
    ['ten minutes apart', jumps(reading(0, 150), reading(10, 80)), false],
    ['exactly 33 °C', jumps(reading(0, 65.1, { unit: 'degC' }), reading(9, 32.1, { unit: 'degC' })), false],
    ['33.1 °C', jumps(reading(0, 65.1, { unit: 'degC' }), reading(9, 32, { unit: 'degC' })), true],
    [
      'two units: exactly 60 °F after conversion',
      jumps(reading(0, 149.96), reading(9, 32.2, { unit: 'degC' })),
      false,
    ],
    [
      'two units: 60.01 °F after conversion',
      jumps(reading(0, 149.97), reading(9, 32.2, { unit: 'degC' })),
      true,
    ],
    ['two spots', jumps(reading(0, 150), reading(1, 80, { spot: 'edge' })), false],
    ['through small steps', jumps(reading(0, 150), reading(4, 120), reading(8, 89)), true],
  ])('%s', (_, got, expected) => expect(got).toBe(expected));
});

test('a stage that counts from the one before is not open where the start is contested: no later look can keep it', () => {
  const maryland = profile('us_md');
  if (maryland === null) throw new Error('tests: us_md is missing');
  const open = (degF: number) =>
    judgeStep(
      'cooling',
      record([reading(-1, degF)], { start: at(0), class: 'intact_roast', facts: { roast_cook: 'kept' } }),
      maryland,
    ).stage_2;
  expect(open(134.9)).toMatchObject({ verdict: 'not_shown', open: false, next: null });
  expect(open(135)).toMatchObject({ verdict: 'not_shown', open: true });
});
