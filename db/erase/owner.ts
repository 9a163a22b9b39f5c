import { drizzle } from 'drizzle-orm/postgres-js';
import postgres from 'postgres';
import type { Db } from '#db/connect.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { BookRefused } from '#db/refused.ts';
import { silent } from '#db/say.ts';
import * as schema from '#db/schema.ts';
import { urlOptions } from '#db/url.ts';

/**
 * The open book again, by the role that owns its tables: the application's own cannot alter the ledger. One
 * connection; `close` ends it and leaves the book open.
 * @throws BookRefused `needs_owner` where no owner is named, `not_the_owner` where the one that is named is none
 */
export async function asOwner(db: Db, env: NodeJS.ProcessEnv): Promise<Db> {
  const sql = postgres({ ...optionsOf(db, env), max: 1, onnotice: () => {} });
  try {
    const [row] = await sql`select current_user as role, pg_has_role(current_user, relowner, 'member') as owns
      from pg_class where oid = 'ledger'::regclass`;
    if (row?.owns !== true) throw new BookRefused('not_the_owner', { role: String(row?.role) });
  } catch (error) {
    await sql.end({ timeout: 1 });
    throw error;
  }
  return { ...db, sql, drizzle: drizzle(sql, { schema }), close: () => sql.end({ timeout: 5 }) };
}

function optionsOf(db: Db, env: NodeJS.ProcessEnv): postgres.Options<Record<string, never>> {
  if (db.kind === 'embedded') {
    return ownerOn(settlePlace(env, silent).sockets, env.HOLDPROOF_DATABASE || 'holdproof');
  }
  if (!env.DATABASE_OWNER_URL) throw new BookRefused('needs_owner', {});
  return urlOptions('DATABASE_OWNER_URL', env.DATABASE_OWNER_URL);
}
