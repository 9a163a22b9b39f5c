import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { type Db, openBook } from '#db/connect.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';

/** Books of one measurement on a PostgreSQL of their own, which goes with them. */
export type OwnBooks = {
  open: (database: string) => Promise<Db>;
  owner: (database: string) => postgres.Sql;
  close: () => Promise<void>;
};

export function ownBooks(): OwnBooks {
  const folder = mkdtempSync(join(tmpdir(), 'holdproof-bench-'));
  const env = { ...process.env, DATABASE_URL: '', HOLDPROOF_DATA: join(folder, 'data') };
  const opened: Db[] = [];
  return {
    open: async (database) => {
      const db = await openBook({ ...env, HOLDPROOF_DATABASE: database });
      opened.push(db);
      return db;
    },
    owner: (database) => postgres(ownerOn(settlePlace(env, silent).sockets, database)),
    close: async () => {
      for (const db of opened) await db.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
