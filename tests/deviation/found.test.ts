import { describe, expect, test } from 'vitest';
import { advice } from '#app/deviation/advice.ts';
import { foundLooks } from '#app/deviation/found-looks.ts';
import type { Look } from '#lib/fold/book.ts';

const at = (clock: string) => Date.parse(`2026-10-17T${clock}:00-05:00`);
const look = (clock: string, value: number, over: Partial<Look> = {}): Look => ({
  id: `${clock} ${value}`,
  seq: 1,
  at: at(clock),
  value,
  typed: String(value),
  unit: 'degF',
  spot: 'edge',
  piece: 2,
  probe: null,
  held_s: null,
  source: 'hand',
  suspect: false,
  correction: null,
  batch: 'b',
  equipment: null,
  by: 'p',
  enteredAt: at(clock),
  late: false,
  round: null,
  amended: null,
  ...over,
});

describe('what was found, piece by piece', () => {
  const night = [
    look('01:32', 148.2),
    look('03:11', 132.5),
    look('03:12', 149.1, { spot: 'core' }),
    look('03:20', 131.9),
    look('03:12', 136.8, { piece: 1 }),
    look('01:30', 150, { piece: 5 }),
  ];

  test('the first look at each place, thin end before thick part, and the look before', () => {
    const found = foundLooks(night, 2, at('03:11'));
    expect(found.looks.map((each) => each.value)).toEqual([132.5, 149.1]);
    expect(found.before?.value).toBe(148.2);
  });

  test('a neighbour read a minute later belongs to the same finding', () => {
    expect(foundLooks(night, 1, at('03:11')).looks.map((each) => each.value)).toEqual([136.8]);
  });

  test('a piece that nobody read has only the look before', () => {
    const found = foundLooks(night, 5, at('03:11'));
    expect(found.looks).toEqual([]);
    expect(found.before?.value).toBe(150);
  });

  test('looks up to 15 minutes before the finding are of the same round; 16 minutes are not', () => {
    const looks = [look('02:55', 140), look('02:56', 141, { spot: 'core' })];
    expect(foundLooks(looks, 2, at('03:11')).looks.map((each) => each.value)).toEqual([141]);
  });
});

describe('advice follows the finding', () => {
  const held = { step: 'hot_hold' as const, stage: 'at_readings', probe: null, batch: 'b' };
  test.each([
    { deviation: held, since: 119, key: 'hold_recent', why: 'last good look under 2 hours ago' },
    { deviation: held, since: 120, key: 'hold_long', why: 'exactly 2 hours is not under 2 hours' },
    { deviation: held, since: null, key: 'hold_long', why: 'no good look at all' },
    { deviation: { ...held, step: 'cooling' as const, stage: 'stage_1' }, since: 5, key: 'cooling', why: '' },
    {
      deviation: { ...held, step: 'cooling' as const, stage: 'total' },
      since: 5,
      key: 'cooling_total',
      why: '',
    },
    { deviation: { ...held, step: 'reheat' as const }, since: 5, key: 'reheat', why: '' },
    { deviation: { ...held, step: 'cook' as const }, since: 5, key: 'cook', why: '' },
    { deviation: { ...held, step: 'cold_hold' as const }, since: 5, key: 'cold', why: '' },
    { deviation: { ...held, probe: 'p', batch: null }, since: 5, key: 'probe', why: 'a thermometer' },
    { deviation: { ...held, batch: null }, since: 5, key: 'equipment', why: 'no food named' },
  ])('$key: $why', ({ deviation, since, key }) => {
    expect(advice(deviation, since)).toBe(key);
  });
});
