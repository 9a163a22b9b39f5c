import type postgres from 'postgres';
import { BookRefused } from './refused.ts';

const leastVersion = 15;

/** What must be on for an acknowledged entry to outlive a power cut. */
const settings = ['fsync', 'full_page_writes', 'synchronous_commit'] as const;

/** Each of these settings as the server says it: "on", "off", for `synchronous_commit` also "local" and the like. */
export type Durability = Record<(typeof settings)[number], string>;

export async function durabilityOf(sql: postgres.Sql): Promise<Durability> {
  const [row] = await sql<Durability[]>`select current_setting('fsync') as fsync,
    current_setting('full_page_writes') as full_page_writes,
    current_setting('synchronous_commit') as synchronous_commit`;
  if (row === undefined) throw new Error('durabilityOf: the server answered without a row');
  return row;
}

/** The first setting under which an acknowledged entry could be lost; null = none. */
export const unsafeSetting = (found: Durability): keyof Durability | null =>
  settings.find((setting) => found[setting] === 'off') ?? null;

/**
 * The server is new enough and writes to disk before it answers.
 *
 * @throws BookRefused `old_server`, `unsafe_setting`
 */
export async function checkServer(sql: postgres.Sql): Promise<void> {
  const [row] = await sql`select current_setting('server_version_num')::int as version`;
  const major = Math.floor(Number(row?.version) / 10_000);
  if (major < leastVersion) throw new BookRefused('old_server', { found: major, least: leastVersion });
  const setting = unsafeSetting(await durabilityOf(sql));
  if (setting !== null) throw new BookRefused('unsafe_setting', { setting, found: 'off' });
}

/**
 * The application's role cannot alter the ledger: it neither owns it (an owner can switch triggers off), nor is a
 * superuser, nor was given the right.
 *
 * @throws BookRefused `may_alter_ledger`
 */
export async function checkRole(sql: postgres.Sql): Promise<void> {
  const [row] = await sql`select current_user as role,
    bool_or(pg_has_role(current_user, c.relowner, 'member')
      or has_table_privilege(c.oid, 'update, delete, truncate, trigger')) as may
    from pg_class c where c.oid in ('ledger'::regclass, 'signed_text'::regclass)`;
  if (row?.may === true) throw new BookRefused('may_alter_ledger', { role: String(row.role) });
}
