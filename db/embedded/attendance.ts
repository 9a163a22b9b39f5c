import { setTimeout as sleep } from 'node:timers/promises';
import postgres from 'postgres';
import { BookRefused } from '#db/refused.ts';
import type { Say } from '#db/say.ts';
import type { Place } from './place.ts';
import {
  lastWords,
  logOf,
  makeCluster,
  ownerRole,
  socketsOfRunning,
  startServer,
  stopServer,
} from './postmaster.ts';

/**
 * One embedded server is shared by every process that opens the book. Each keeps one connection on which it holds
 * a shared advisory lock: it is present. Whoever leaves tries for the same lock alone: got it means that nobody
 * else is present, so the last one out stops the server; anyone who arrives at that moment waits for the lock,
 * loses the connection with the server, and starts it again. Killed processes leave with their connection.
 */
export type Attendance = {
  readonly sockets: string;
  /** The server's process behind our connection: needed to leave while this process is going down. */
  readonly backend: number;
  /** False once the connection was lost: the server died or was stopped. */
  present(): boolean;
  leave(): Promise<void>;
};

const presence = 7_021_001; // number of the advisory lock, in the database `postgres`
const patienceMs = 120_000;

export const ownerOn = (sockets: string, database: string) => ({
  host: sockets,
  port: 5432,
  database,
  username: ownerRole,
  password: '',
  max: 1,
  idle_timeout: 0,
  max_lifetime: null,
  onnotice: () => {},
});

/** Attaches to the server that runs on this place, or makes the cluster and starts it. */
export async function attend(place: Place, say: Say): Promise<Attendance> {
  await makeCluster(place, say);
  const until = Date.now() + patienceMs;
  let said = false;
  let started = false;
  for (;;) {
    const found = await arrive(place, socketsOfRunning(place) ?? place.sockets);
    if (found !== null) return found;
    if (!started) say('starting', {});
    started = true;
    if (await startServer(place)) continue;
    // Another process is starting it; it recovers after a kill; or a killed server's backends are still there.
    if (Date.now() > until) {
      throw new BookRefused('does_not_start', { log: logOf(place), detail: lastWords(place) });
    }
    if (!said) say('waiting', { detail: lastWords(place) });
    said = true;
    await sleep(250);
  }
}

/** Connects and takes the lock; null when no server answers there (any more). */
async function arrive(place: Place, sockets: string): Promise<Attendance | null> {
  let present = true;
  const sql = postgres({
    ...ownerOn(sockets, 'postgres'),
    onclose: () => {
      present = false;
    },
  });
  try {
    const [row] = await sql`select pg_backend_pid() as backend, pg_advisory_lock_shared(${presence})`;
    const leave = async () => {
      await sql.end({ timeout: 5 });
      await stopUnlessOthers(place, sockets);
    };
    return { sockets, backend: Number(row?.backend), present: () => present, leave };
  } catch {
    await sql.end({ timeout: 1 });
    return null;
  }
}

/** The last one out stops the server. Called when our own presence has ended, or names its backend to end it. */
export async function stopUnlessOthers(place: Place, sockets: string, backend?: number): Promise<void> {
  const sql = postgres(ownerOn(sockets, 'postgres'));
  try {
    if (backend !== undefined) await sql`select pg_terminate_backend(${backend}, 5000)`;
    const [row] = await sql`select pg_try_advisory_lock(${presence}) as alone`;
    if (row?.alone === true) await stopServer(place);
  } catch {
    // It does not answer: there is nothing to stop.
  } finally {
    await sql.end({ timeout: 1 });
  }
}
