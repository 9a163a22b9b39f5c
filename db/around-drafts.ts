import type postgres from 'postgres';
import type { Entry } from '#shared/entries/entry.ts';
import type { Db } from './connect.ts';
import { type EntryRow, entriesOf, entryColumns } from './entry-of.ts';

/** What drafts speak of: batches, single entries, and the moments (ms) of their readings. All ids in lower case. */
export type SpokenOf = {
  batches: readonly string[];
  entries: readonly string[];
  readings: { fromMs: number; toMs: number } | null;
};

type Rows = PromiseLike<readonly (EntryRow & { subject: string | null })[]>;

/**
 * The entries by which drafts are taken or refused, and no more: how their batches were made and moved, what these
 * were corrected to, the entries that they name, and the readings about their moments. Each part is asked by an
 * index, so saving one figure does not wait for a night to be read; by hand, for one is saved every few seconds.
 */
export async function aroundDrafts(
  { sql }: Pick<Db, 'sql'>,
  site: string,
  { entries, readings, ...spoken }: SpokenOf,
): Promise<Entry[]> {
  const rows = (condition: postgres.PendingQuery<postgres.Row[]>): Rows =>
    sql`select ${sql.unsafe(entryColumns)}, subject from ledger where site = ${site} and ${condition}`;
  const near =
    readings === null
      ? []
      : rows(sql`kind = 'reading' and at_ms >= ${readings.fromMs} and at_ms <= ${readings.toMs}`);
  const named = entries.length === 0 ? [] : await rows(sql`id = any(${[...entries]}::uuid[])`);
  const batches = [...new Set([...spoken.batches, ...named.flatMap(({ subject }) => subject ?? [])])];
  const made = sql`subject = any(${batches}::uuid[]) and kind in ('batch', 'step')`;
  const amended = sql`kind = 'amendment'
    and target in (select id from ledger where site = ${site} and ${made})`;
  const ofBatches = batches.length === 0 ? [] : [rows(made), rows(amended)];
  const parts = await Promise.all([near, ...ofBatches]);
  return entriesOf([named, ...parts].flat()); // an entry that comes twice is taken once by the fold
}
