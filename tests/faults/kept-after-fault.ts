import { expect } from 'vitest';
import { walkSite } from '#bin/verify/walk.ts';
import { type Db, openBook } from '#db/connect.ts';
import { listSites, loadAll, loadEntries } from '#db/load.ts';
import { foldNow } from '#lib/fold/fold-now.ts';
import type { Phone } from './phone.ts';

/**
 * The promise after any fault: every acknowledged entry is in the book, once, under the number that was told; what
 * was sent and not acknowledged is there once or not at all; the chain is whole and the batches' lives are what
 * their entries say (the walk); what the screens load by index folds to the same book as the whole ledger read anew.
 */
export async function expectNothingLost(db: Db, site: string, phones: readonly Phone[]): Promise<void> {
  const entries = await loadAll(db, site);
  const numbers = new Map(entries.map(({ id, seq }) => [id, seq]));
  expect(numbers.size).toBe(entries.length);
  const sent = new Set(phones.flatMap((phone) => [...phone.sent]));
  for (const phone of phones) {
    expect(phone.wrong).toEqual([]);
    const lost = [...phone.told].filter(([id, seq]) => numbers.get(id) !== seq);
    expect(lost).toEqual([]);
  }
  const ours = new Set(['reading', 'amendment', 'batch', 'step', 'food']);
  expect(entries.filter(({ id, kind }) => ours.has(kind) && !sent.has(id))).toEqual([]);
  expect((await walkSite(db.sql, site, () => {})).misfit).toBeNull();
  const now = Date.now();
  const loaded = await loadEntries(db, site, { fromMs: now - 48 * 3_600_000, toMs: now + 300_000 });
  expect(foldNow(loaded, now)).toEqual(foldNow(entries, now));
}

/** The same, looked at by another process than the one that answered. */
export async function expectBookKept(env: NodeJS.ProcessEnv, phones: readonly Phone[]): Promise<void> {
  const db = await openBook(env);
  try {
    const [site] = await listSites(db);
    if (site === undefined) throw new Error('the site is gone');
    await expectNothingLost(db, site.site, phones);
  } finally {
    await db.close();
  }
}
