import { describe, expect, test } from 'vitest';
import { limitsBy, limitsOf } from '#lib/fold/limits-of.ts';
import { limitsProblems } from '#lib/fold/limits-problems.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { LimitsChanges } from '#shared/entries/limits.ts';
import { type Night, night } from './night.ts';

const ours = '01995555-0000-7000-8000-000000000001';
const house = { section: 'house limit', authority: null, document: null, dated: null };
const granted = { section: 'V-12', authority: 'County health', document: 'Variance 12', dated: '2026-03-01' };
const body = (changes: LimitsChanges, more: Partial<Body<'limits'>> = {}): Body<'limits'> => ({
  limits: ours,
  name: 'Ours',
  extends: 'fda_2022',
  changes,
  active: true,
  ...more,
});
const chosen = (made: Night, clock: string, profile = ours): Night => {
  const site = made.book(clock).kitchen.site;
  if (!site) throw new Error('a night without a kitchen');
  return made.add('site', clock, { ...site, profile });
};
const problems = (changes: LimitsChanges) =>
  limitsProblems(body(changes), { site: null }).map(({ field, problem }) => `${field} ${problem}`);

/** One brisket at 138 °F: above the published 135, under a house's 140. */
const held138 = (changes: LimitsChanges): Night =>
  chosen(night().add('limits', '17:00', body(changes)), '17:01')
    .batch('17:05', 'A', 1, 'ribs')
    .step('17:10', 'A', 'hot_hold', 'cab1')
    .read('18:00', 'A1 edge', '138');
const at = (made: Night, clock: string) => made.book(clock).batches.get('A')?.runs[0]?.stages.at_readings;

describe('limits made on screen', () => {
  test('are judged by: 138 °F keeps the published figure and misses the house’s, which is named with both', () => {
    const stage = at(held138({ hot_hold: { value: 140, unit: 'degF', ...house } }), '18:30');
    expect(stage).toMatchObject({
      verdict: 'broken',
      section: 'house limit (3-501.16(A)(1): 135 °F)',
      limit: { value: 140, unit: 'degF' },
    });
    expect(
      limitsOf(held138({ cold_hold: { value: 38, unit: 'degF', ...house } }).book('18:30').kitchen).local?.by,
    ).toBe('cook');
    expect(at(held138({ cold_hold: { value: 38, unit: 'degF', ...house } }), '18:30')?.verdict).toBe('kept');
  });

  test('leave what is broken by the published figure broken', () => {
    const made = held138({ hot_hold: { value: 140, unit: 'degF', ...house } }).read(
      '19:00',
      'A1 edge',
      '134.9',
    );
    expect(at(made, '19:30')?.verdict).toBe('broken');
  });

  test('never get looser in the unit that was not typed: 58 °C is 136.4 °F, 57.1 °C stays 135 °F or above', () => {
    const figure = (value: number) =>
      limitsBy(
        {
          limits: new Map([
            [
              ours,
              { body: body({ hot_hold: { value, unit: 'degC', ...house } }), by: 'boss', at: 0, entry: 'e' },
            ],
          ]),
        },
        ours,
      ).profile?.figures.hot_hold?.value;
    expect(figure(58)).toEqual({ degF: 136.4, degC: 58 });
    expect(figure(57.1)).toEqual({ degF: 135, degC: 57.1 });
  });

  test('count from their own moment on: what was written later changes no earlier moment', () => {
    const made = held138({ hot_hold: { value: 140, unit: 'degF', ...house } });
    const later = made.add('limits', '20:00', body({ hot_hold: { value: 137, unit: 'degF', ...house } }));
    expect(at(later, '18:30')?.verdict).toBe('broken');
    expect(at(later, '20:30')?.verdict).toBe('kept');
  });

  test('that nobody knows are said and nothing is judged, without a fault', () => {
    const made = chosen(night(), '17:01', 'moon_base').batch('17:05', 'A', 1, 'ribs');
    const book = made.step('17:10', 'A', 'hot_hold', 'cab1').read('18:00', 'A1 edge', '138').book('18:30');
    expect(book.odd.map(({ key }) => key)).toContain('unknown_limits');
    expect(book.batches.get('A')?.runs[0]?.reason).toBe('no_figure');
  });
});

describe('a figure of the house', () => {
  test.each<[string, LimitsChanges]>([
    ['hotter than published', { hot_hold: { value: 135.1, unit: 'degF', ...house } }],
    ['colder than published', { cold_hold: { value: 4.9, unit: 'degC', ...house } }],
    ['a shorter first stage', { stage_1_within: { minutes: 119, ...house } }],
    ['without the roast allowance', { hot_hold_roast: { off: true, ...house } }],
    ['held longer in a reheat', { reheat_held: { seconds: 16, ...house } }],
    ['a longest hold where none is published', { hot_hold_at_most: { minutes: 600, ...house } }],
  ])('is free when stricter: %s', (_, changes) => {
    expect(problems(changes)).toEqual([]);
  });

  test.each<[string, LimitsChanges]>([
    ['hot_hold', { hot_hold: { value: 134.9, unit: 'degF', ...house } }],
    ['cold_hold', { cold_hold: { value: 5.1, unit: 'degC', ...house } }],
    ['total_within', { total_within: { minutes: 361, ...house } }],
    ['reheat_held', { reheat_held: { seconds: 14, ...house } }],
  ])('looser wants authority, document and date: %s', (role, changes) => {
    expect(problems(changes)).toEqual(
      ['authority', 'document', 'dated'].map((part) => `body.changes.${role}.${part} looser_needs_ground`),
    );
  });

  test('looser with its document is taken, and cited by it', () => {
    const changes = { hot_hold: { value: 130, unit: 'degF' as const, ...granted } };
    expect(problems(changes)).toEqual([]);
    const figure = limitsOf(held138(changes).book('18:30').kitchen).profile?.figures.hot_hold;
    expect(figure).toMatchObject({ section: 'V-12', edition: 'County health, Variance 12, 2026-03-01' });
  });
});
