import { type Entry, setUpKinds } from '#shared/entries/entry.ts';
import type { Db } from './connect.ts';
import { type EntryRow, entriesOf, entryColumns } from './entry-of.ts';

const kinds = [...setUpKinds, 'amendment'];

/**
 * Set-up and amendments that a site's chain got after `seq`, and where the chain ends. Both in one statement, so
 * that they are of one moment. By hand, for it is asked with each figure that is saved.
 */
export async function setUpSince(
  { sql }: Pick<Db, 'sql'>,
  site: string,
  seq: number,
): Promise<{ entries: Entry[]; seq: number }> {
  const rows = await sql<(EntryRow & { end: number })[]>`
    select head.seq::float8 as end, ${sql.unsafe(entryColumns)}
    from head left join ledger on ledger.site = head.site and ledger.seq > ${seq} and ledger.kind = any(${kinds})
    where head.site = ${site}`;
  return {
    entries: entriesOf(rows.filter(({ id }) => id !== null)), // null: the chain got nothing of these
    seq: Math.max(seq, rows[0]?.end ?? seq),
  };
}
