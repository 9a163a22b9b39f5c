import { describe, expect, test } from 'vitest';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, JudgedReading } from '#lib/judge/record.ts';
import { profile } from '#lib/limits/profiles.ts';
import { at, fda, reading, record } from './records.ts';

const out: Facts = { mode: '4h', removed_at: at(0), written_procedure: true, marked: true, gone_at: null };
const timed = (
  facts: Facts,
  readings: readonly JudgedReading[] = [],
  asked: Parameters<typeof record>[1] = {},
  limits = fda,
) =>
  judgeStep(
    'time_control',
    record(readings, { asOf: at(60), facts: { ...out, ...facts }, ...asked }),
    limits,
  );

const of = (id: string) => {
  const found = profile(id);
  if (found === null) throw new Error(`${id} is missing`);
  return found;
};

describe('gone within 4 h, 6 h of leaving control (3-501.19(B), (C))', () => {
  test.each([
    ['4h', 240],
    ['6h', 360],
  ] as const)('%s', (mode, limit) => {
    const gone = (minutes: number) => timed({ mode, gone_at: at(minutes) }, [], { asOf: at(900) }).time;
    expect(gone(limit - 1 / 60)).toMatchObject({ verdict: 'kept', limit_min: limit, open: false });
    expect(gone(limit)).toMatchObject({ verdict: 'kept', longest_min: limit, deadline: at(limit) });
    expect(gone(limit + 1 / 60)).toMatchObject({ verdict: 'broken', open: false });
    const still = (minutes: number) => timed({ mode }, [], { asOf: at(minutes) }).time;
    expect(still(limit)).toMatchObject({ verdict: 'not_shown', open: true, remaining_min: 0 });
    expect(still(limit)).toMatchObject({
      next: { action: 'use_by', by: at(limit) },
      reasons: ['not_reached'],
    });
    expect(still(limit + 1 / 60)).toMatchObject({ verdict: 'broken', reasons: [] });
  });
  test('what is gone after the moment of asking is still there', () => {
    expect(timed({ gone_at: at(61) }).time).toMatchObject({ verdict: 'not_shown', open: true });
  });
  test('nobody noted when it left', () => {
    expect(timed({ removed_at: null }).time).toMatchObject({
      verdict: 'not_shown',
      reasons: ['start_unknown'],
      deadline: null,
      open: false,
    });
  });
  test('gone before it left: the record shows neither', () => {
    expect(timed({ gone_at: at(-5) }).time?.verdict).toBe('not_shown');
  });
  test('a form that nobody named is the four hours', () => {
    expect(timed({ mode: undefined }).time?.limit_min).toBe(240);
  });
});

describe('procedure and mark', () => {
  test.each([
    [true, 'kept'],
    [false, 'broken'],
    [null, 'not_shown'],
  ] as const)('%s: %s', (there, verdict) => {
    const stages = timed({ written_procedure: there, marked: there });
    expect(stages.procedure).toMatchObject({ verdict, open: false, section: '3-501.19(A)' });
    expect(stages.marking).toMatchObject({ verdict, open: false });
  });
});

describe('the start', () => {
  const start = (mode: '4h' | '6h', value: number, told: Partial<JudgedReading> = {}, facts: Facts = {}) =>
    timed({ mode, ...facts }, [reading(-5, value, { spot: 'warmest', ...told })]).start;
  test.each([
    ['4h', 41, 'degF', 'warmest', 'kept'],
    ['4h', 41.1, 'degF', 'warmest', 'broken'],
    ['4h', 5, 'degC', 'warmest', 'kept'],
    ['4h', 5.1, 'degC', 'warmest', 'broken'],
    ['4h', 135, 'degF', 'coldest', 'kept'],
    ['4h', 134.9, 'degF', 'coldest', 'broken'],
    ['4h', 57, 'degC', 'edge', 'kept'],
    ['4h', 56.9, 'degC', 'edge', 'broken'],
    ['6h', 41, 'degF', 'warmest', 'kept'],
    ['6h', 41.1, 'degF', 'warmest', 'broken'],
    ['6h', 150, 'degF', 'edge', 'broken'],
  ] as const)('%s from %s %s at %s: %s', (mode, value, unit, spot, verdict) => {
    expect(start(mode, value, { unit, spot })).toMatchObject({ verdict, open: false });
  });
  test.each([
    [35, 'coldest', 'coldest_only'],
    [150, 'warmest', 'warmest_only'],
  ] as const)('%s °F at the %s proves nothing', (value, spot, reason) => {
    expect(start('4h', value, { spot })).toMatchObject({ verdict: 'not_shown', reasons: [reason] });
  });
  test('a thermometer that failed proves nothing', () => {
    expect(start('4h', 150, { spot: 'edge', suspect: true })).toMatchObject({
      verdict: 'not_shown',
      reasons: ['suspect_only'],
    });
  });
  test('only the last look counts, all of its moment; the air does not', () => {
    const looks = (...readings: JudgedReading[]) => timed({}, readings).start?.verdict;
    const edge = { spot: 'edge' } as const;
    expect(looks(reading(-10, 100, edge), reading(-5, 140, edge))).toBe('kept');
    expect(looks(reading(-10, 140, edge), reading(-5, 100, edge))).toBe('broken');
    expect(looks(reading(-5, 140, edge), reading(-5, 130))).toBe('broken');
    expect(looks(reading(-5, 140, edge), reading(-1, 100, { spot: 'air' }))).toBe('kept');
    expect(looks(reading(0, 140, edge), reading(1, 100, edge))).toBe('kept');
  });
  test('hot at one place and cold at another is neither', () => {
    const readings = [reading(-5, 140, { spot: 'edge' }), reading(-5, 40)];
    expect(timed({}, readings).start?.verdict).toBe('broken');
  });
  test('of several pieces the worst; one that was looked at only after is not shown', () => {
    const one = reading(-5, 140, { spot: 'edge', piece: 1 });
    const two = (minutes: number, value: number) => reading(minutes, value, { spot: 'edge', piece: 2 });
    expect(timed({}, [one, two(-5, 140)]).start?.verdict).toBe('kept');
    expect(timed({}, [one, two(-5, 134)]).start?.verdict).toBe('broken');
    expect(timed({}, [one, two(5, 140)]).start).toMatchObject({
      verdict: 'not_shown',
      reasons: ['no_reading'],
    });
  });
  test('a piece that nobody read is said of the start, and of nothing that is known by facts', () => {
    const stages = timed({}, [reading(-5, 140, { spot: 'edge', piece: 1 })], { pieces: 2 });
    expect(stages.start).toMatchObject({ verdict: 'kept', reasons: ['some_pieces_unread'], pieces_read: 1 });
    expect(stages.time?.pieces_read).toBeUndefined();
  });
});

describe('the warmth of cold food in the six hours', () => {
  const warmth = (value: number, told: Partial<JudgedReading> = {}, facts: Facts = {}) =>
    timed({ mode: '6h', ...facts }, [
      reading(-5, 40, { spot: 'warmest' }),
      reading(30, value, { spot: 'warmest', ...told }),
    ]).warmth;
  test.each([
    [70, 'degF', 'kept'],
    [70.1, 'degF', 'broken'],
    [21, 'degC', 'kept'],
    [21.1, 'degC', 'broken'],
  ] as const)('%s %s: %s', (value, unit, verdict) => {
    expect(warmth(value, { unit })).toMatchObject({
      verdict,
      open: verdict === 'kept',
      section: '3-501.19(C)(1)',
    });
  });
  test('the coldest place can only break, and what was read after it was gone is not of it', () => {
    expect(warmth(60, { spot: 'coldest' })).toMatchObject({
      verdict: 'not_shown',
      reasons: ['coldest_only'],
    });
    expect(warmth(75, { spot: 'coldest' })?.verdict).toBe('broken');
    expect(warmth(75, {}, { gone_at: at(29) })).toMatchObject({ verdict: 'not_shown', open: false });
  });
  test('the four hours ask no such thing', () => {
    expect(timed({}, [reading(30, 100)]).warmth).toMatchObject({
      verdict: 'not_applicable',
      reasons: ['no_figure'],
    });
  });
});

describe('a start that an edition adds for one kind of food', () => {
  const cut = (value: number, later: number, limits = fda) =>
    timed(
      { starts_as: 'produce_cut' },
      [reading(-1, value, { spot: 'warmest' }), reading(30, later, { spot: 'warmest' })],
      {},
      limits,
    );
  test('at 70 °F or less, and never above it while it is out', () => {
    expect(cut(70, 70).start?.verdict).toBe('kept');
    expect(cut(70.1, 70).start?.verdict).toBe('broken');
    expect(cut(70, 70).warmth?.verdict).toBe('kept');
    expect(cut(70, 70.1).warmth?.verdict).toBe('broken');
  });
  test('a cold start asks nothing of the time after it', () => {
    expect(cut(41, 75).warmth?.verdict).toBe('not_applicable');
  });
  test('an edition without it, and a food that is not of the kind, has no such start', () => {
    expect(cut(60, 60, of('fda_2017')).start?.verdict).toBe('broken');
    expect(timed({}, [reading(-1, 60, { spot: 'warmest' })]).start?.verdict).toBe('broken');
  });
});

describe('places that ask for more than the figure', () => {
  test('Minnesota starts above 135 °F, not at it', () => {
    const start = (value: number) =>
      timed({}, [reading(-1, value, { spot: 'edge' })], {}, of('us_mn')).start?.verdict;
    expect(start(135)).toBe('broken');
    expect(start(135.1)).toBe('kept');
  });
  test('New York City lets six hours run only below 70 °F', () => {
    const warmth = (value: number) =>
      timed({ mode: '6h' }, [reading(30, value, { spot: 'warmest' })], {}, of('us_nyc')).warmth?.verdict;
    expect(warmth(70)).toBe('broken');
    expect(warmth(69.9)).toBe('kept');
  });
  test('a code without the rule says so', () => {
    expect(timed({}, [], {}, of('us_ca')).time).toMatchObject({
      verdict: 'not_applicable',
      reasons: ['no_figure'],
    });
  });
});
