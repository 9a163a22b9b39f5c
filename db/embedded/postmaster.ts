import { spawn } from 'node:child_process';
import {
  appendFileSync,
  chownSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { BookRefused } from '#db/refused.ts';
import type { Say } from '#db/say.ts';
import type { Place } from './place.ts';

/** The first user of the cluster: owner of the tables, used for migrations and for keeping the house. */
export const ownerRole = 'holdproof_owner';

const settings = `
# Written by Holdproof. Nothing listens on the network: the only way in is the private socket.
listen_addresses = ''
max_connections = 60
timezone = 'UTC'
log_timezone = 'UTC'
log_checkpoints = off
`;

type Ran = { code: number | null; output: string };

/** Runs one of PostgreSQL's programs as the server's user. `read` false where a child of it stays and would keep the output open. */
function run(place: Place, program: string, args: string[], read: boolean): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(join(place.binaries, 'bin', program), args, {
      cwd: '/',
      env: { PATH: process.env.PATH ?? '', LC_ALL: 'C' } as unknown as NodeJS.ProcessEnv,
      stdio: ['ignore', read ? 'pipe' : 'ignore', read ? 'pipe' : 'ignore'],
      ...(place.user === null ? {} : { uid: place.user.uid, gid: place.user.gid }),
    });
    let output = '';
    child.stdout?.on('data', (data) => {
      output += data;
    });
    child.stderr?.on('data', (data) => {
      output += data;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, output }));
  });
}

export const logOf = (place: Place): string => join(place.cluster, 'server.log');

/** The last line that the server wrote about itself: why it does not start. */
export function lastWords(place: Place): string {
  if (!existsSync(logOf(place))) return '';
  return readFileSync(logOf(place), 'utf8').trimEnd().split('\n').at(-1) ?? '';
}

/**
 * Makes an empty cluster where there is none. It is made under another name and renamed when whole, so a process
 * killed half-way leaves nothing that looks like a book, and of two that start at once one wins.
 */
export async function makeCluster(place: Place, say: Say): Promise<void> {
  if (existsSync(join(place.cluster, 'PG_VERSION'))) return;
  say('preparing', { folder: place.cluster });
  sweepUnfinished(place.cluster);
  const unfinished = `${place.cluster}.new-${process.pid}`;
  mkdirSync(unfinished, { mode: 0o700 });
  if (place.user !== null) chownSync(unfinished, place.user.uid, place.user.gid);
  const options = ['--auth-local=trust', '--auth-host=reject', '--encoding=UTF8', '--locale=C'];
  const made = await run(place, 'initdb', ['-D', unfinished, '-U', ownerRole, ...options], true);
  if (made.code !== 0) {
    rmSync(unfinished, { recursive: true, force: true });
    throw new BookRefused('initdb_failed', { folder: place.cluster, detail: made.output.trim().slice(-300) });
  }
  appendFileSync(join(unfinished, 'postgresql.conf'), settings);
  try {
    renameSync(unfinished, place.cluster);
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    if (!existsSync(join(place.cluster, 'PG_VERSION'))) throw error;
  }
}

function sweepUnfinished(cluster: string): void {
  for (const name of readdirSync(dirname(cluster))) {
    const pid = name.startsWith(`${basename(cluster)}.new-`) ? Number(name.split('-').at(-1)) : Number.NaN;
    if (Number.isInteger(pid) && !isAlive(pid))
      rmSync(join(dirname(cluster), name), { recursive: true, force: true });
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** The folder of the socket on which a server of this cluster says that it listens; null = none runs, as far as known. */
export function socketsOfRunning(place: Place): string | null {
  const path = join(place.cluster, 'postmaster.pid');
  if (!existsSync(path)) return null;
  return readFileSync(path, 'utf8').split('\n')[4]?.trim() || null;
}

/** Starts the server and waits until it answers. False = it did not start: see `lastWords`. */
export async function startServer(place: Place): Promise<boolean> {
  const args = [
    'start',
    '-w',
    '-t',
    '60',
    '-s',
    '-D',
    place.cluster,
    '-l',
    logOf(place),
    '-o',
    `-k ${place.sockets}`,
  ];
  return (await run(place, 'pg_ctl', args, false)).code === 0;
}

/** Stops the server cleanly: open transactions are rolled back, everything acknowledged is on disk. */
export async function stopServer(place: Place): Promise<void> {
  await run(place, 'pg_ctl', ['stop', '-w', '-t', '60', '-s', '-m', 'fast', '-D', place.cluster], true);
}
