import { and, eq, gt, inArray } from 'drizzle-orm';
import { type Entry, setUpKinds } from '#shared/entries/entry.ts';
import type { Db } from './connect.ts';
import { entriesOf } from './entry-of.ts';
import { head, ledger } from './schema.ts';

/**
 * Set-up and amendments that a site's chain got after `seq`, and where the chain ended when this was asked. The
 * end is read first, so nothing between the two is missed: what came meanwhile may be answered twice.
 */
export async function setUpSince(
  db: Db,
  site: string,
  seq: number,
): Promise<{ entries: Entry[]; seq: number }> {
  const [end] = await db.drizzle
    .select({ seq: head.seq })
    .from(head)
    .where(eq(head.site, site))
    .prepare('end_of_chain')
    .execute();
  if (end === undefined || end.seq <= seq) return { entries: [], seq };
  const rows = await db.drizzle
    .select()
    .from(ledger)
    .where(
      and(eq(ledger.site, site), gt(ledger.seq, seq), inArray(ledger.kind, [...setUpKinds, 'amendment'])),
    )
    .prepare('set_up_since')
    .execute();
  return { entries: entriesOf(rows), seq: end.seq };
}
