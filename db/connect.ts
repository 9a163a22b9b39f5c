import { drizzle, type PostgresJsDatabase } from 'drizzle-orm/postgres-js';
import postgres from 'postgres';
import { checkRole, checkServer } from './conditions.ts';
import { attend, ownerOn } from './embedded/attendance.ts';
import { leaveOnExit } from './embedded/exit.ts';
import { settlePlace } from './embedded/place.ts';
import { appRole, furnish } from './embedded/roles.ts';
import { migrate, schemaState } from './migrate.ts';
import { BookRefused } from './refused.ts';
import { type Say, silent } from './say.ts';
import * as schema from './schema.ts';
import { urlOptions } from './url.ts';

/** The open book. Everything in db takes it as its first argument. */
export type Db = {
  readonly drizzle: PostgresJsDatabase<typeof schema>;
  /** The driver itself, for what drizzle cannot say. */
  readonly sql: postgres.Sql;
  readonly kind: 'embedded' | 'url';
  /** Where an embedded server keeps its data; null = a URL's server, whose disk we do not see. */
  readonly folder: string | null;
  /** False once the embedded server was lost: close this book and open another. A URL's server is not ours to judge. */
  readonly alive: () => boolean;
  /** Ends the connections; the last one out stops an embedded server. */
  readonly close: () => Promise<void>;
};

type Connect = postgres.Options<Record<string, never>>;

/**
 * Opens the book: the PostgreSQL of DATABASE_URL, or the embedded one below HOLDPROOF_DATA (./data). Attaches to
 * an embedded server that already runs, starts it otherwise; brings the tables up to date.
 *
 * @throws BookRefused when a person must change something first
 */
export async function openBook(env: NodeJS.ProcessEnv = process.env, say: Say = silent): Promise<Db> {
  return env.DATABASE_URL ? openByUrl(env.DATABASE_URL, env, say) : openEmbedded(env, say);
}

async function openEmbedded(env: NodeJS.ProcessEnv, say: Say): Promise<Db> {
  const database = env.HOLDPROOF_DATABASE || 'holdproof';
  const place = settlePlace(env, say);
  const attendance = await attend(place, say);
  const stay = leaveOnExit(place, attendance);
  const leave = async () => {
    stay();
    await attendance.leave();
  };
  try {
    await furnish(attendance.sockets, database);
    const owner = ownerOn(attendance.sockets, database);
    const app = { ...owner, username: appRole };
    const book = await openOn(app, owner, say);
    return {
      ...book,
      kind: 'embedded',
      folder: place.cluster,
      alive: attendance.present,
      close: async () => {
        await book.sql.end({ timeout: 5 });
        await leave();
      },
    };
  } catch (error) {
    await leave();
    throw error;
  }
}

async function openByUrl(url: string, env: NodeJS.ProcessEnv, say: Say): Promise<Db> {
  const app = urlOptions('DATABASE_URL', url);
  const ownerUrl = env.DATABASE_OWNER_URL;
  const owner = ownerUrl ? urlOptions('DATABASE_OWNER_URL', ownerUrl) : null;
  const book = await openOn(app, owner, say);
  return { ...book, kind: 'url', folder: null, alive: () => true, close: () => book.sql.end({ timeout: 5 }) };
}

/**
 * Seconds before a lost database is tried again: the driver's own wait grows to 20 s, in which nobody would be told
 * that the database is away, nor find that it is back.
 */
const backoffS = (tries: number): number => Math.min(tries / 10, 1);

async function openOn(app: Connect, owner: Connect | null, say: Say): Promise<Pick<Db, 'drizzle' | 'sql'>> {
  const sql = postgres({ ...app, max: 10, max_lifetime: null, backoff: backoffS, onnotice: () => {} });
  try {
    await prepare(sql, owner, say);
    return { drizzle: drizzle(sql, { schema }), sql };
  } catch (error) {
    await sql.end({ timeout: 1 });
    throw asRefusal(error);
  }
}

async function prepare(sql: postgres.Sql, owner: Connect | null, say: Say): Promise<void> {
  await checkServer(sql);
  if ((await schemaState(sql)) === 'behind') {
    const role = await roleOf(sql);
    if (owner === null) throw new BookRefused('needs_migration', { role });
    if (owner.username === role) throw new BookRefused('same_role', { role });
    await migrate(owner, role, say);
  }
  await checkRole(sql);
}

async function roleOf(sql: postgres.Sql): Promise<string> {
  const [row] = await sql`select current_user as role`;
  return String(row?.role);
}

const unreachable = ['ECONNREFUSED', 'ENOENT', 'ENOTFOUND', 'EAI_AGAIN', 'CONNECT_TIMEOUT', 'ETIMEDOUT'];

/** No server there, a wrong password, no such database: said in words; anything else is a fault and stays one. */
function asRefusal(error: unknown): unknown {
  const { code, message } = error as { code?: string; message?: string };
  const known =
    code !== undefined && (unreachable.includes(code) || code.startsWith('28') || code === '3D000');
  return known ? new BookRefused('unreachable', { detail: message || code }) : error;
}
