import { drizzle } from 'drizzle-orm/postgres-js';
import type postgres from 'postgres';
import type { Db } from './connect.ts';
import * as schema from './schema.ts';

/**
 * Leaves statements unanswered for now: the commit is sent right behind them, which saves the time of one question.
 * After a statement that failed the server undoes the whole, and `transact` throws what failed.
 */
type Unawaited = (...statements: readonly postgres.PendingQuery<postgres.Row[]>[]) => void;

/**
 * Does all of the work in one transaction or none of it. `within` is the book over the transaction's connection:
 * what takes a book may be given it.
 * @throws what the work throws, and the database's own faults
 */
export async function transact<T>(
  db: Db,
  work: (within: Db, unawaited: Unawaited) => Promise<T>,
): Promise<T> {
  const last: Promise<unknown>[] = [];
  const unawaited: Unawaited = (...statements) => {
    for (const statement of statements) {
      const sent = statement.execute(); // now, and so before the commit
      sent.catch(() => {}); // told below
      last.push(sent);
    }
  };
  const answer = await db.sql.begin((sql) => work(over(db, sql), unawaited));
  await Promise.all(last);
  return answer as T;
}

/** Drizzle is made when somebody asks for it: a saved figure does not. */
function over(db: Db, transaction: postgres.TransactionSql): Db {
  const sql = Object.assign(transaction as unknown as postgres.Sql, { options: db.sql.options });
  let made: Db['drizzle'] | null = null;
  const { kind, folder, alive, close } = db;
  return {
    kind,
    folder,
    alive,
    close,
    sql,
    get drizzle() {
      made ??= drizzle(sql, { schema });
      return made;
    },
  };
}
