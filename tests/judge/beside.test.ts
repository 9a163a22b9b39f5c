import { describe, expect, test } from 'vitest';
import { coolingAdvice } from '#lib/judge/cooling-methods.ts';
import { judgeStep, withoutSuspect } from '#lib/judge/judge.ts';
import type { Facts } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { messages } from '#shared/words/messages.ts';
import { at, fda, reading, record } from './records.ts';

const of = (id: string): Profile => {
  const found = profile(id);
  if (found === null) throw new Error(`${id} is missing`);
  return found;
};
const edge = { spot: 'edge' } as const;

describe('a hold that a text limits in length (Brazil: 6 h)', () => {
  const length = (asked: Parameters<typeof record>[1]) =>
    judgeStep('hot_hold', record([reading(0, 150, edge)], asked), of('br')).hold_length;
  test.each([
    [360, 'kept'],
    [360 + 1 / 60, 'broken'],
  ] as const)('from start to end %s min: %s', (minutes, verdict) => {
    expect(length({ start: at(0), end: at(minutes), asOf: at(minutes) })).toMatchObject({
      verdict,
      open: false,
    });
  });
  test('while it goes on nothing is kept, and its end is known', () => {
    expect(length({ start: at(0), asOf: at(300) })).toMatchObject({
      verdict: 'not_shown',
      open: true,
      deadline: at(360),
      remaining_min: 60,
    });
    expect(length({ start: at(0), asOf: at(361) })?.verdict).toBe('broken');
  });
  test('without a start it may be older: never kept, broken when even the looks are too long', () => {
    expect(length({ end: at(60), asOf: at(60) })).toMatchObject({
      verdict: 'not_shown',
      reasons: ['start_unknown'],
    });
    expect(length({ end: at(361), asOf: at(361) })?.verdict).toBe('broken');
  });
  test('a code without such a figure has no such stage', () => {
    expect(judgeStep('hot_hold', record([reading(0, 150)]), fda).hold_length).toBeUndefined();
  });
});

test('a text that says how often held food is written (New Brunswick: every 4 h)', () => {
  const interval = (until: number) =>
    judgeStep('hot_hold', record([reading(0, 150, edge)], { start: at(0), asOf: at(until) }), of('ca_nb'))
      .record_interval;
  expect(interval(240)).toMatchObject({ verdict: 'kept', open: true, limit_min: 240 });
  expect(interval(240 + 1 / 60)).toMatchObject({ verdict: 'broken', longest_gap_min: 240 + 1 / 60 });
  expect(interval(240)?.section).not.toBe('house plan');
});

test('exceptions that a text names stand beside a broken hold and soften nothing', () => {
  const held = (value: number) =>
    judgeStep('hot_hold', record([reading(0, value, { ...edge, unit: 'degC' })]), of('au_322')).at_readings;
  expect(held(59.9)?.verdict).toBe('broken');
  expect(held(59.9)?.defences).toEqual(of('au_322').figures.hot_hold_defences.map(({ id }) => id));
  expect(held(59.9)?.defences?.length).toBeGreaterThan(0);
  expect(held(60)?.defences).toBeUndefined();
});

describe('cooling without a clock (Washington)', () => {
  const thin: Facts = { uncovered_protected: true, unit_air: 41, layer_in: 2 };
  const late = [reading(0, 136), reading(1, 134), reading(130, 71), reading(400, 50)];
  const cooled = (facts: Facts, food: 'pork_whole' | 'plant' = 'plant') =>
    judgeStep('cooling', record(late, { facts, class: food }), of('us_wa')).stage_1;
  test('the conditions recorded, no figure speaks of the time', () => {
    expect(cooled(thin)).toMatchObject({ verdict: 'not_applicable', reasons: ['no_figure'] });
    const piece: Facts = { uncovered_protected: true, unit_air: 41, intact_in: 4 };
    expect(cooled(piece, 'pork_whole')?.verdict).toBe('not_applicable');
  });
  test.each([
    ['a layer over 2 in', { ...thin, layer_in: 2.1 }],
    ['air over 41 °F', { ...thin, unit_air: 41.1 }],
    ['air not noted', { ...thin, unit_air: null }],
    ['covered', { ...thin, uncovered_protected: false }],
    ['nothing noted', {}],
    ['4 in thick, and no whole piece of meat', { uncovered_protected: true, unit_air: 41, intact_in: 4 }],
  ] as const)('%s: the clock counts', (_, facts) => {
    expect(cooled(facts)?.verdict).toBe('broken');
  });
  test('a code without the way counts by the clock whatever is noted', () => {
    expect(judgeStep('cooling', record(late, { facts: thin }), fda).stage_1?.verdict).toBe('broken');
  });
});

describe('ways of cooling', () => {
  test('the model code names its section and ways; a profile without them names none', () => {
    expect(coolingAdvice(fda)?.section).toBe('3-501.15');
    expect(coolingAdvice({ ...fda, figures: { ...fda.figures, cooling_methods: null } })).toBeNull();
  });
  test.each(['en', 'es'] as const)('each way of each profile has its words in %s', (language) => {
    const known = Object.keys(messages[language].judge.method);
    for (const id of profileIds)
      expect(known).toEqual(expect.arrayContaining([...(coolingAdvice(of(id))?.methods ?? [])]));
  });
});

describe('what the verdict would be without the suspicion', () => {
  const suspect = [reading(0, 150, { ...edge, suspect: true })];
  test('is said beside, and changes nothing', () => {
    expect(judgeStep('hot_hold', record(suspect), fda).at_readings?.verdict).toBe('not_shown');
    expect(withoutSuspect('hot_hold', record(suspect), fda)?.at_readings?.verdict).toBe('kept');
    expect(suspect[0]?.suspect).toBe(true);
  });
  test('and is not asked where no reading is suspect', () => {
    expect(withoutSuspect('hot_hold', record([reading(0, 150)]), fda)).toBeNull();
  });
});
