import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { drizzle } from 'drizzle-orm/postgres-js';
import { migrate as applyMigrations } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { programFolder } from './program-folder.ts';
import { BookRefused } from './refused.ts';
import type { Say } from './say.ts';

const lock = 7_021_003; // number of the advisory lock, in the book's own database
const migrationsTable = 'migration';
const folder = (): string => join(programFolder(), 'db', 'migrations');

/** A version of the tables: how many migrations they have seen, and when (ms) the last of these was made. */
export type SchemaVersion = { number: number; made_ms: number };

/** The newest version of the tables that this program knows. */
export function newestSchema(): SchemaVersion {
  const journal = JSON.parse(readFileSync(join(folder(), 'meta', '_journal.json'), 'utf8')) as {
    entries: { when: number }[];
  };
  return { number: journal.entries.length, made_ms: Math.max(...journal.entries.map(({ when }) => when)) };
}

/** The version of this database's tables. */
export async function schemaOf(sql: postgres.Sql | postgres.TransactionSql): Promise<SchemaVersion> {
  const [row] =
    await sql`select count(*)::int as number, max(created_at) as made from ${sql(migrationsTable)}`;
  return { number: Number(row?.number ?? 0), made_ms: Number(row?.made ?? 0) };
}

/**
 * How the database's tables stand to this program. Tables that this role may not use as it has to count as `behind`:
 * the owner's connection makes them, or grants them, also after a kill between the two.
 *
 * @throws BookRefused `newer_schema`: a newer program wrote here, and its book is not ours to touch
 */
export async function schemaState(sql: postgres.Sql): Promise<'current' | 'behind'> {
  const known = newestSchema().made_ms;
  try {
    const [row] = await sql`select max(created_at) as newest from ${sql(migrationsTable)}`;
    const found = Number(row?.newest ?? 0);
    if (found > known) throw new BookRefused('newer_schema', { found: dayOf(found), known: dayOf(known) });
    return found === known && (await isLetIn(sql)) ? 'current' : 'behind';
  } catch (error) {
    const { code } = error as { code?: string };
    if (code === '42P01' || code === '42501') return 'behind'; // no such table, or not ours to read
    throw error;
  }
}

const dayOf = (ms: number): string => new Date(ms).toISOString().slice(0, 16);

/**
 * Brings the tables up to this program and lets the application's role in. One connection, one advisory lock:
 * of two servers that start on an empty database one migrates, the other waits and finds it done.
 */
export async function migrate(
  owner: postgres.Options<Record<string, never>>,
  appRole: string,
  say: Say,
): Promise<void> {
  const sql = postgres({ ...owner, max: 1, onnotice: () => {} });
  try {
    await sql`select pg_advisory_lock(${lock})`;
    if ((await schemaState(sql)) === 'behind') {
      say('migrating', {});
      await applyMigrations(drizzle(sql), {
        migrationsFolder: folder(),
        migrationsTable,
        migrationsSchema: 'public',
      });
    }
    await letIn(sql, appRole);
  } finally {
    await sql.end({ timeout: 5 });
  }
}

/** What the application may do: add to the ledger and read it, keep the rest. Nothing else, table by table. */
const rights: Readonly<Record<string, readonly string[]>> = {
  [migrationsTable]: ['select'],
  ledger: ['select', 'insert'],
  signed_text: ['select', 'insert'],
  head: ['select', 'insert', 'update'],
  secret: ['select', 'insert', 'update', 'delete'],
  device: ['select', 'insert', 'update'],
  sign_in: ['select', 'insert', 'update'],
  batch_life: ['select', 'insert', 'update', 'delete'],
  seal: ['select', 'insert', 'update'], // a restore brings its own
  device_clock: ['select', 'insert'],
};

async function letIn(sql: postgres.Sql, role: string): Promise<void> {
  await sql`grant usage on schema public to ${sql(role)}`;
  for (const [table, may] of Object.entries(rights))
    await sql`grant ${sql.unsafe(may.join(', '))} on ${sql(table)} to ${sql(role)}`;
}

/** Whether the role of this connection has all of these rights. */
async function isLetIn(sql: postgres.Sql): Promise<boolean> {
  const each = Object.entries(rights).flatMap(([table, may]) => may.map((right) => ({ table, right })));
  const [row] = await sql`
    select bool_and(has_table_privilege(t, r)) as all
    from unnest(${each.map(({ table }) => table)}::text[], ${each.map(({ right }) => right)}::text[]) as asked (t, r)`;
  return row?.all === true;
}
