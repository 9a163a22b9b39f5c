import { createHash, randomBytes } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { type Db, openBook } from '#db/connect.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';

/**
 * A database of its own on an embedded server that all test processes of this checkout share: the first to come
 * starts it, the last to go stops it. `close` drops the database.
 */
export type FreshBook = {
  db: Db;
  /** For another process, or another `openBook`, on the same database. */
  env: NodeJS.ProcessEnv;
  /** A connection as the owner of the tables. End it before closing. */
  owner: () => postgres.Sql;
  close: () => Promise<void>;
};

const shared = (): string => {
  const key = createHash('sha256').update(process.cwd()).digest('hex').slice(0, 12);
  return join(tmpdir(), `holdproof-tests-${process.getuid?.() ?? 0}-${key}`);
};

export async function freshBook(): Promise<FreshBook> {
  const env: NodeJS.ProcessEnv = {
    ...process.env,
    DATABASE_URL: '',
    HOLDPROOF_DATA: shared(),
    HOLDPROOF_DATABASE: `test_${randomBytes(6).toString('hex')}`,
  };
  const db = await openBook(env);
  const { sockets } = settlePlace(env, silent);
  const database = env.HOLDPROOF_DATABASE ?? '';
  return {
    db,
    env,
    owner: () => postgres(ownerOn(sockets, database)),
    close: async () => {
      const sql = postgres(ownerOn(sockets, 'postgres'));
      await sql`drop database if exists ${sql(database)} with (force)`;
      await sql.end();
      await db.close();
    },
  };
}
