import { and, eq, gte, inArray, lte, type SQL } from 'drizzle-orm';
import type { Entry } from '#shared/entries/entry.ts';
import type { Asks } from './connect.ts';
import { entriesOf } from './entry-of.ts';
import { ledger } from './schema.ts';

/** What drafts speak of: batches, single entries, and the moments (ms) of their readings. All ids in lower case. */
export type SpokenOf = {
  batches: readonly string[];
  entries: readonly string[];
  readings: { fromMs: number; toMs: number } | null;
};

/**
 * The entries by which drafts are taken or refused, and no more: how their batches were made and moved, what these
 * were corrected to, the entries that they name, and the readings about their moments. Each part is asked by an
 * index, so saving one figure does not wait for a night to be read.
 */
export async function aroundDrafts(asks: Asks, site: string, spoken: SpokenOf): Promise<Entry[]> {
  const rows = (condition: SQL | undefined) =>
    asks
      .select()
      .from(ledger)
      .where(and(eq(ledger.site, site), condition))
      .prepare('around_drafts') // kept planned: a figure is saved every few seconds on a round
      .execute();
  const named = spoken.entries.length === 0 ? [] : await rows(inArray(ledger.id, [...spoken.entries]));
  const batches = [...new Set([...spoken.batches, ...named.flatMap(({ subject }) => subject ?? [])])];
  const made = and(inArray(ledger.subject, batches), inArray(ledger.kind, ['batch', 'step']));
  const ofBatches = asks
    .select({ id: ledger.id })
    .from(ledger)
    .where(and(eq(ledger.site, site), made));
  const parts = await Promise.all([
    batches.length === 0 ? [] : rows(made),
    batches.length === 0 ? [] : rows(and(eq(ledger.kind, 'amendment'), inArray(ledger.target, ofBatches))),
    spoken.readings === null
      ? []
      : rows(
          and(
            eq(ledger.kind, 'reading'),
            gte(ledger.atMs, spoken.readings.fromMs),
            lte(ledger.atMs, spoken.readings.toMs),
          ),
        ),
  ]);
  return entriesOf([named, ...parts].flat()); // an entry that comes twice is taken once by the fold
}
