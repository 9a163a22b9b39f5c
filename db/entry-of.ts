import type { Entry } from '#shared/entries/entry.ts';
import { isErased } from './erased.ts';
import type { ledger } from './schema.ts';

/** What of a row an entry is made of. */
export type EntryRow = Pick<
  typeof ledger.$inferSelect,
  | 'site'
  | 'seq'
  | 'id'
  | 'kind'
  | 'version'
  | 'at'
  | 'enteredAt'
  | 'receivedAt'
  | 'by'
  | 'known'
  | 'device'
  | 'body'
>;

/** The same as columns of a statement by hand, from the ledger named so. */
export const entryColumns = `ledger.site, ledger.seq::float8 as seq, ledger.id, ledger.kind, ledger.version, ledger.at,
  ledger.entered_at as "enteredAt", ledger.received_at as "receivedAt", ledger.by, ledger.known, ledger.device,
  ledger.body`;

/** Rows as entries, in their order. Those that were erased at the end of their retention are left out. */
export const entriesOf = (rows: readonly EntryRow[]): Entry[] =>
  rows.filter((row) => !isErased(row)).map(entryOf);

/** A row of the ledger as an entry. The body was checked by its schema before it was written. */
function entryOf(row: EntryRow): Entry {
  const { site, seq, id, kind, version, at, by, known, device } = row;
  const said = { site, seq, id, kind, version, at, by, known, device };
  return {
    ...said,
    entered_at: row.enteredAt,
    received_at: row.receivedAt,
    body: JSON.parse(row.body),
  } as Entry;
}
