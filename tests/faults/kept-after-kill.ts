import { expect } from 'vitest';
import { walkSite } from '#bin/verify/walk.ts';
import type { Db } from '#db/connect.ts';
import { loadAll } from '#db/load.ts';

/** What a client was told of one entry before the server died. */
export type Acknowledged = { id: string; seq: number };

/**
 * The promise after any kill: every acknowledged entry is in the book, once, under the number that was told; the
 * chain is whole; what was sent and not acknowledged is there once or not at all.
 */
export async function expectNothingLost(
  db: Db,
  site: string,
  acknowledged: readonly Acknowledged[],
  sent: readonly string[],
): Promise<void> {
  const entries = await loadAll(db, site);
  const numbers = new Map(entries.map(({ id, seq }) => [id, seq]));
  for (const { id, seq } of acknowledged) expect(numbers.get(id)).toBe(seq);
  expect(numbers.size).toBe(entries.length);
  const mayBeThere = new Set([...sent, ...acknowledged.map(({ id }) => id)]);
  const strangers = entries.filter(({ id, kind }) => kind === 'reading' && !mayBeThere.has(id));
  expect(strangers).toEqual([]);
  expect((await walkSite(db.sql, site, () => {})).misfit).toBeNull();
}
