import { createHash, randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { programFolder } from '#db/program-folder.ts';
import { BookRefused } from '#db/refused.ts';
import type { Say } from '#db/say.ts';
import { binariesFor } from './binaries.ts';
import { canEnter, type OsUser, userForServer } from './os-user.ts';

/** Where one embedded server lives. */
export type Place = {
  /** PostgreSQL's own data folder, of the user who runs it. */
  cluster: string;
  /** Folder (0700) of its private socket. Under /tmp: a socket's path may have about 100 bytes. */
  sockets: string;
  /** Folder with bin/, lib/ and share/. */
  binaries: string;
  /** The user who runs it; null = the one who runs this program. */
  user: OsUser | null;
};

const elsewhere = '/var/lib/holdproof';
const note = 'place.txt';

export const dataFolder = (env: NodeJS.ProcessEnv): string =>
  resolve(/* turbopackIgnore: true */ env.HOLDPROOF_DATA || join(programFolder(), 'data'));

/**
 * Settles where the data lies and who runs the server.
 *
 * Run by an ordinary user: below the data folder, as that user. Run by root: as another user, since PostgreSQL
 * refuses root; and where a closed folder on the way keeps that user out, under /var/lib/holdproof, which a note
 * in the data folder then names for ever after.
 *
 * @throws BookRefused when the folder is another user's, or the place that the note names is gone: an empty book
 *   in its stead would look like a loss
 */
export function settlePlace(env: NodeJS.ProcessEnv, say: Say): Place {
  const folder = dataFolder(env);
  mkdirSync(folder, { recursive: true });
  const user = process.getuid?.() === 0 ? userForServer(ownerOf(clusterIn(noted(folder) ?? folder))) : null;
  const base = user === null ? folder : baseFor(user, folder, say);
  const cluster = clusterIn(base);
  const owner = ownerOf(cluster);
  if (owner !== null && owner !== (user?.uid ?? process.getuid?.())) {
    throw new BookRefused('not_yours', { folder: cluster });
  }
  return { cluster, sockets: socketFolder(cluster, user), binaries: binariesFor(user, base, say), user };
}

const clusterIn = (base: string): string => join(base, 'postgres');
const ownerOf = (path: string): number | null => (existsSync(path) ? statSync(path).uid : null);

function noted(folder: string): string | null {
  const path = join(folder, note);
  if (!existsSync(path)) return null;
  const place = readFileSync(path, 'utf8').trim();
  if (!existsSync(place)) throw new BookRefused('place_gone', { folder, place });
  return place;
}

function baseFor(user: OsUser, folder: string, say: Say): string {
  const before = noted(folder);
  if (before !== null) return before;
  if (canEnter(user, folder)) return folder;
  // By a random name, kept in the note: a new clone at an old path must not find the old clone's book.
  const place = join(elsewhere, randomBytes(6).toString('hex'));
  mkdirSync(place, { recursive: true });
  for (const made of [elsewhere, place]) chmodSync(made, 0o755); // whatever the umask is
  if (!canEnter(user, place)) throw new BookRefused('place_unreachable', { folder: place, user: user.name });
  writeFileSync(join(folder, note), `${place}\n`);
  say('placed', { folder, place });
  return place;
}

/**
 * The socket's folder, which only the server's user (and root) can enter: that is what lets the server trust
 * whoever comes through it. One that someone else made is refused.
 */
function socketFolder(cluster: string, user: OsUser | null): string {
  const uid = user?.uid ?? process.getuid?.() ?? 0;
  const key = createHash('sha256').update(cluster).digest('hex').slice(0, 16);
  const folder = `/tmp/holdproof-${uid}-${key}`;
  try {
    mkdirSync(folder, { mode: 0o700 });
    if (user !== null) chownSync(folder, user.uid, user.gid);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  const found = lstatSync(folder);
  if (!found.isDirectory() || found.uid !== uid || (found.mode & 0o077) !== 0) {
    throw new BookRefused('socket_folder_taken', { folder });
  }
  return folder;
}
