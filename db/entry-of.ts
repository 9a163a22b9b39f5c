import type { Entry } from '#shared/entries/entry.ts';
import type { ledger } from './schema.ts';

/** A row of the ledger as an entry. The body was checked by its schema before it was written. */
export function entryOf(row: typeof ledger.$inferSelect): Entry {
  const { site, seq, id, kind, version, at, by, known, device } = row;
  const said = { site, seq, id, kind, version, at, by, known, device };
  return {
    ...said,
    entered_at: row.enteredAt,
    received_at: row.receivedAt,
    body: JSON.parse(row.body),
  } as Entry;
}
