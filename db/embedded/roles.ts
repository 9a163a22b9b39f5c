import postgres from 'postgres';
import { ownerOn } from './attendance.ts';

/** The application's own role in the embedded server: it may add to the ledger, never change it. */
export const appRole = 'holdproof_app';

const furnishing = 7_021_002; // number of the advisory lock, in the database `postgres`

/** The application's role and its database, made where they are missing. Two processes may ask at once. */
export async function furnish(sockets: string, database: string): Promise<void> {
  const sql = postgres(ownerOn(sockets, 'postgres'));
  try {
    await sql`select pg_advisory_lock(${furnishing})`;
    const roles = await sql`select 1 from pg_roles where rolname = ${appRole}`;
    if (roles.length === 0) await sql`create role ${sql(appRole)} login`;
    const databases = await sql`select 1 from pg_database where datname = ${database}`;
    if (databases.length === 0) await sql`create database ${sql(database)}`;
  } finally {
    await sql.end({ timeout: 5 });
  }
}
