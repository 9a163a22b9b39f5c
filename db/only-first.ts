import { sql } from 'drizzle-orm';
import type { Db } from './connect.ts';
import { head } from './schema.ts';

const lock = 7_021_004; // number of the advisory lock, in the book's own database

/**
 * Does what makes the first site, when there is none: of two browsers that set up at once, one does and the other
 * is told. @returns null when the book already has a site
 */
export async function onlyFirst<T>(db: Db, make: () => Promise<T>): Promise<T | null> {
  return db.drizzle.transaction(async (tx) => {
    await tx.execute(sql`select pg_advisory_xact_lock(${lock})`);
    const sites = await tx.select({ site: head.site }).from(head).limit(1);
    return sites.length > 0 ? null : make();
  });
}
