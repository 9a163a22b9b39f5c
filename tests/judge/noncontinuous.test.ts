import { describe, expect, test } from 'vitest';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, JudgedReading } from '#lib/judge/record.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { at, fda, reading, record } from './records.ts';

/** Heated from noon for 50 minutes; the last cook begins at minute 900. */
const told: Facts = {
  heat_from: at(0),
  heat_to: at(50),
  final_from: at(900),
  written: true,
  approved: true,
};
const cook = (
  facts: Facts,
  readings: readonly JudgedReading[],
  asOf = 1000,
  food: FoodClass = 'poultry',
  more: Parameters<typeof record>[1] = {},
) =>
  judgeStep(
    'noncontinuous',
    record(readings, { asOf: at(asOf), class: food, facts: { ...told, ...facts }, ...more }),
    fda,
  );

describe('the first heating, at most 60 minutes (3-401.14)', () => {
  test.each([
    [60, 'kept'],
    [60 + 1 / 60, 'broken'],
  ] as const)('from start to end %s min: %s', (minutes, verdict) => {
    expect(cook({ heat_to: at(minutes) }, []).initial_heating).toMatchObject({ verdict, open: false });
  });
  test('still on', () => {
    const on = (asOf: number) => cook({ heat_to: null, final_from: null }, [], asOf).initial_heating;
    expect(on(60)).toMatchObject({ verdict: 'not_shown', open: true, remaining_min: 0 });
    expect(on(60 + 1 / 60)).toMatchObject({ verdict: 'broken', open: false });
  });
  test('an end that is not seen yet', () => {
    expect(cook({}, [], 40).initial_heating).toMatchObject({ verdict: 'not_shown', open: true });
  });
  test('a step that ended before the hour, with no end of the heat noted: never longer, and nothing can come', () => {
    const ended = (minutes: number) =>
      cook({ heat_to: null, final_from: null }, [], 1000, 'poultry', { end: at(minutes) });
    expect(ended(60).initial_heating).toMatchObject({ verdict: 'not_shown', open: false });
    expect(ended(60 + 1 / 60).initial_heating).toMatchObject({ verdict: 'broken', open: false });
    expect(ended(60).cooling).toMatchObject({ verdict: 'not_shown', open: false });
    expect(ended(60).final_cook).toMatchObject({ verdict: 'not_shown', open: false });
  });
  test('nobody noted when it began', () => {
    expect(cook({ heat_from: null }, []).initial_heating).toMatchObject({
      verdict: 'not_shown',
      reasons: ['start_unknown'],
    });
  });
});

describe('cooling between the two heatings', () => {
  /** Down to 70 °F at `warm` and to 41 °F at `cold`, in minutes after noon. */
  const cooled = (warm: number, cold: number) => [reading(warm, 70), reading(cold, 41)];
  test.each([
    ['70 °F 120 min and 41 °F 360 min after the heat’s end', 170, 410, 'kept'],
    ['70 °F a second late', 170 + 1 / 60, 410, 'not_shown'],
    ['41 °F a second late', 170, 410 + 1 / 60, 'not_shown'],
  ] as const)('%s: %s', (_, warm, cold, verdict) => {
    expect(cook({}, cooled(warm, cold)).cooling).toMatchObject({ verdict, section: '3-401.14' });
  });
  test('a look still at 135 °F after the heat starts the clock', () => {
    const readings = [reading(60, 135), reading(180, 70), reading(420, 41)];
    expect(cook({}, readings).cooling?.verdict).toBe('kept');
  });
  test('a look before the heat’s end is not of it', () => {
    const readings = [reading(20, 30), reading(180, 60), reading(300, 38)];
    expect(cook({}, readings).cooling).toMatchObject({
      verdict: 'not_shown',
      reasons: ['brackets_too_wide'],
    });
  });
  test('above 70 °F two hours after it was below 135 °F is broken', () => {
    const readings = (minutes: number) => [reading(60, 120), reading(minutes, 70.1)];
    expect(cook({ final_from: null }, readings(180), 180).cooling?.verdict).toBe('broken');
    expect(cook({ final_from: null }, readings(180 - 1 / 60), 180).cooling?.verdict).toBe('not_shown');
  });
  test('what is read from the last cook on is not of it', () => {
    const readings = [...cooled(170, 410), reading(950, 166)];
    expect(cook({}, readings).cooling?.verdict).toBe('kept');
  });
  test('from the last cook on it is not open, even where the end of the heat was not noted', () => {
    expect(cook({ heat_to: null }, []).cooling).toMatchObject({ verdict: 'not_shown', open: false });
  });
  test('open while a stage is, with the first deadline', () => {
    const open = cook({ final_from: null }, [], 60).cooling;
    expect(open).toMatchObject({ verdict: 'not_shown', open: true, deadline: at(170) });
    expect(cook({ heat_to: null, final_from: null }, [], 30).cooling).toMatchObject({ open: true });
  });
});

describe('the last cook, by the food’s own row', () => {
  test.each([
    ['poultry', 165, null, 'kept'],
    ['poultry', 164.9, null, 'not_shown'],
    ['ground', 155, 17, 'kept'],
    ['ground', 155, 16, 'not_shown'],
    ['pork_whole', 145, 15, 'kept'],
    ['intact_roast', 130, 6720, 'kept'],
    ['intact_roast', 130, 6719, 'not_shown'],
    ['pulled_or_chopped', 200, null, 'not_applicable'],
  ] as const)('%s at %s °F for %s s: %s', (food, value, held_s, verdict) => {
    expect(cook({}, [reading(950, value, { held_s })], 1000, food).final_cook?.verdict).toBe(verdict);
  });
  test('what was read before it does not show it', () => {
    expect(cook({}, [reading(899, 170)]).final_cook).toMatchObject({
      verdict: 'not_shown',
      reasons: ['no_reading'],
    });
    expect(cook({}, [reading(900, 170)]).final_cook?.verdict).toBe('kept');
    expect(cook({ final_from: null }, [reading(950, 170)]).final_cook).toMatchObject({
      verdict: 'not_shown',
      open: true,
    });
  });
  test('ended below the lowest row, it is broken', () => {
    const more = { end: at(955) };
    expect(cook({}, [reading(950, 164.9)], 1000, 'poultry', more).final_cook?.verdict).toBe('broken');
  });
});

describe('the procedure, in writing and approved', () => {
  test.each([
    [true, true, 'kept'],
    [true, false, 'broken'],
    [false, null, 'broken'],
    [true, null, 'not_shown'],
    [null, null, 'not_shown'],
  ] as const)('written %s, approved %s: %s', (written, approved, verdict) => {
    expect(cook({ written, approved }, []).procedure).toMatchObject({ verdict, open: false });
  });
});

test('pieces: the worst of each part, and how many were read for it', () => {
  const readings = [
    reading(170, 60, { piece: 1 }),
    reading(300, 38, { piece: 1 }),
    reading(950, 166, { piece: 1 }),
    reading(951, 166, { piece: 2 }),
  ];
  const stages = cook({}, readings, 1000, 'poultry', { pieces: 2 });
  expect(stages.cooling).toMatchObject({ verdict: 'kept', pieces_read: 1, reasons: ['some_pieces_unread'] });
  expect(stages.final_cook).toMatchObject({ verdict: 'kept', pieces_read: 2, reasons: [] });
  expect(Object.keys(stages)).toEqual(['initial_heating', 'cooling', 'final_cook', 'procedure']);
});
