import { describe, expect, test } from 'vitest';
import { margin } from '#app/batch/margin.ts';
import { watchPulled } from '#app/batch/watch-pulled.ts';
import type { Look, Member } from '#lib/fold/book.ts';
import type { Stage } from '#lib/judge/answer.ts';

const minute = 60_000;
const look = (at: number, value: number, piece: number | null, over: Partial<Look> = {}): Look => ({
  id: `${at} ${value}`,
  seq: 1,
  at: at * minute,
  value,
  typed: String(value),
  unit: 'degF',
  spot: 'edge',
  piece,
  probe: null,
  held_s: null,
  source: 'hand',
  suspect: false,
  correction: null,
  batch: 'b',
  equipment: null,
  by: 'p',
  enteredAt: at * minute,
  late: false,
  round: null,
  amended: null,
  ...over,
});
const member = (piece: number, until: number | null): Member => ({
  piece,
  from: 0,
  until: until === null ? null : until * minute,
  entry: `s${piece}`,
  details: {},
  massLb: null,
});

describe('pulling the watch piece asks for a new one', () => {
  const looks = [look(10, 150, 1), look(11, 141, 2), look(12, 144, 3), look(12, 160, 3, { spot: 'core' })];
  const run = { step: 'hot_hold' as const, end: null, looks };

  test('the coldest was pulled, nobody has read the others since', () => {
    expect(watchPulled({ ...run, members: [member(1, null), member(2, 60), member(3, null)] })).toBe(true);
  });

  test('another one was pulled: the watch piece is still there', () => {
    expect(watchPulled({ ...run, members: [member(1, 60), member(2, null), member(3, null)] })).toBe(false);
  });

  test('a look after it answers the question', () => {
    const members = [member(1, null), member(2, 60), member(3, null)];
    expect(watchPulled({ ...run, members, looks: [...looks, look(61, 143, 3)] })).toBe(false);
  });

  test('one piece that is left needs no choice', () => {
    expect(watchPulled({ ...run, members: [member(1, 30), member(2, 60), member(3, null)] })).toBe(false);
  });
});

describe('the margin is of the worst figure, on the right side of the comparison', () => {
  const stage = (value: number, comparison: 'at_or_above' | 'at_or_below'): Stage => ({
    verdict: 'kept',
    open: false,
    section: 's',
    limit: { value, unit: 'degF', comparison },
    limit_min: null,
    longest_min: null,
    shortest_min: null,
    deadline: null,
    remaining_min: null,
    reasons: [],
    next: null,
    rests_on: [],
  });

  test.each([
    { values: [150, 138.4], step: 'hot_hold', limit: 135, comparison: 'at_or_above', margin: 3.4 },
    { values: [150, 132.5], step: 'hot_hold', limit: 135, comparison: 'at_or_above', margin: -2.5 },
    { values: [38, 42.1], step: 'cold_hold', limit: 41, comparison: 'at_or_below', margin: -1.1 },
    { values: [38, 40.9], step: 'cold_hold', limit: 41, comparison: 'at_or_below', margin: 0.1 },
  ] as const)('$values against $limit: $margin', ({ values, step, limit, comparison, ...expected }) => {
    const looks = values.map((value, i) => look(i, value, 1));
    expect(margin({ looks, step }, stage(limit, comparison))?.value).toBe(expected.margin);
  });

  test('air says nothing of the food, and an unread step has no margin', () => {
    expect(
      margin({ looks: [look(1, 90, null, { spot: 'air' })], step: 'hot_hold' }, stage(135, 'at_or_above')),
    ).toBeNull();
  });
});
