import { describe, expect, test } from 'vitest';
import { latestWorst } from '#app/batch/latest.ts';
import type { Look, Member } from '#lib/fold/book.ts';

const minute = 60_000;
const look = (at: number, value: number, piece: number | null, spot: Look['spot'] = 'edge'): Look => ({
  id: `${at} ${value}`,
  seq: 1,
  at: at * minute,
  value,
  typed: String(value),
  unit: 'degF',
  spot,
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
});
const member = (piece: number, until: number | null): Member => ({
  piece,
  from: 0,
  until: until === null ? null : until * minute,
  entry: `s${piece}`,
  details: {},
  massLb: null,
});

describe('the lowest figure is that of the last looks at what is there now', () => {
  const looks = [
    look(10, 131, 1),
    look(100, 144, 1),
    look(101, 152, 1, 'core'),
    look(100, 128, 2),
    look(102, 147, 3),
  ];

  test('not the lowest of the night, and not that of a piece that is gone', () => {
    const run = {
      step: 'hot_hold' as const,
      looks,
      members: [member(1, null), member(2, 110), member(3, null)],
    };
    expect(latestWorst(run)?.value).toBe(144);
  });

  test('when all are gone it is that of the last looks at all of them', () => {
    const run = {
      step: 'hot_hold' as const,
      looks,
      members: [member(1, 110), member(2, 110), member(3, 110)],
    };
    expect(latestWorst(run)?.value).toBe(128);
  });

  test('where cold is asked for it is the warmest', () => {
    const cold = [look(5, 39, 1), look(5, 42.1, 2)];
    const run = { step: 'cold_hold' as const, looks: cold, members: [member(1, null), member(2, null)] };
    expect(latestWorst(run)?.value).toBe(42.1);
  });

  test('nobody has read it: no figure', () => {
    expect(latestWorst({ step: 'hot_hold', looks: [], members: [member(1, null)] })).toBeNull();
  });
});
