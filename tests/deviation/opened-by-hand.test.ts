import { describe, expect, test } from 'vitest';
import { openedByHand } from '#app/deviation/opened-by-hand.ts';
import { kinds } from '#shared/entries/entry.ts';

const id = (n: number) => `0199e000-0000-7000-8000-00000000000${n}`;
const limit = { section: '3-501.16(A)(1)', value: 135, unit: 'degF' as const, within_min: null };
const food = {
  kind: 'food' as const,
  batch: id(1),
  pieces: [2],
  step: 'hot_hold' as const,
  equipment: id(2),
  limit,
};

describe('a deviation opened by hand', () => {
  test('about food: pieces, step, place and limit; the last good look is named by its entry', () => {
    const { kind, body } = openedByHand(
      food,
      { kind: 'good', entry: id(3), at: '2026-10-17T06:32:00Z' },
      ' ajar ',
      'en',
    );
    expect(kinds.deviation.body.safeParse(body).error?.issues ?? []).toEqual([]);
    expect(kind).toBe('deviation');
    expect(body).toEqual({
      batch: id(1),
      pieces: [2],
      step: 'hot_hold',
      equipment: id(2),
      probe: null,
      limit,
      found: null,
      last_good: id(3),
      since: null,
      since_basis: null,
      text: 'ajar',
      lang: 'en',
    });
  });

  test('a time that is known says how', () => {
    const since = { kind: 'known' as const, at: '2026-10-17T06:40:00Z', basis: 'door last used' };
    const { body } = openedByHand({ kind: 'equipment', equipment: id(2) }, since, 'breaker', 'es');
    expect(kinds.deviation.body.safeParse(body).error?.issues ?? []).toEqual([]);
    expect(body).toMatchObject({
      batch: null,
      equipment: id(2),
      since: since.at,
      since_basis: 'door last used',
    });
  });

  test('nobody knows: no time is made up', () => {
    const { body } = openedByHand({ kind: 'probe', probe: id(4) }, { kind: 'unknown' }, 'reads high', 'en');
    expect(kinds.deviation.body.safeParse(body).error?.issues ?? []).toEqual([]);
    expect(body).toMatchObject({ probe: id(4), since: null, last_good: null, since_basis: null });
  });
});
