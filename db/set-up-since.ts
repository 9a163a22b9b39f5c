import { and, eq, gt, inArray } from 'drizzle-orm';
import { type Entry, setUpKinds } from '#shared/entries/entry.ts';
import type { Asks } from './connect.ts';
import { entriesOf } from './entry-of.ts';
import { head, ledger } from './schema.ts';

/**
 * Set-up and amendments that a site's chain got after `seq`, and where the chain ends. Both in one statement, so
 * that they are of one moment.
 */
export async function setUpSince(
  asks: Asks,
  site: string,
  seq: number,
): Promise<{ entries: Entry[]; seq: number }> {
  const after = and(
    eq(ledger.site, head.site),
    gt(ledger.seq, seq),
    inArray(ledger.kind, [...setUpKinds, 'amendment']),
  );
  const rows = await asks
    .select({ end: head.seq, row: ledger })
    .from(head)
    .leftJoin(ledger, after)
    .where(eq(head.site, site))
    .prepare('set_up_since')
    .execute();
  return {
    entries: entriesOf(rows.flatMap(({ row }) => row ?? [])),
    seq: Math.max(seq, rows[0]?.end ?? seq),
  };
}
