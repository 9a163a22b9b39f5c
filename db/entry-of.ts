import type { Entry } from '#shared/entries/entry.ts';
import { isErased } from './erased.ts';
import type { ledger } from './schema.ts';

/** Rows as entries, in their order. Those that were erased at the end of their retention are left out. */
export const entriesOf = (rows: readonly (typeof ledger.$inferSelect)[]): Entry[] =>
  rows.filter((row) => !isErased(row)).map(entryOf);

/** A row of the ledger as an entry. The body was checked by its schema before it was written. */
function entryOf(row: typeof ledger.$inferSelect): Entry {
  const { site, seq, id, kind, version, at, by, known, device } = row;
  const said = { site, seq, id, kind, version, at, by, known, device };
  return {
    ...said,
    entered_at: row.enteredAt,
    received_at: row.receivedAt,
    body: JSON.parse(row.body),
  } as Entry;
}
