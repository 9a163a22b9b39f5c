import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { BookRefused } from '#db/refused.ts';

/** A user of this machine other than the one who runs the program. PostgreSQL refuses to run as root. */
export type OsUser = { uid: number; gid: number; name: string };

const preferred = ['postgres', '_postgres', 'nobody'];

/** The user to whom the server is handed when the program runs as root. `owner`: whose the data already is. */
export function userForServer(owner: number | null): OsUser {
  const users = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'))
    .map(([name = '', , uid, gid]) => ({ name, uid: Number(uid), gid: Number(gid) }))
    .filter(({ uid, gid }) => uid > 0 && gid > 0);
  const known = users.find(({ uid }) => uid === owner);
  if (known !== undefined) return known;
  if (owner !== null && owner > 0) return { uid: owner, gid: owner, name: String(owner) };
  for (const name of preferred) {
    const user = users.find((one) => one.name === name);
    if (user !== undefined) return user;
  }
  throw new BookRefused('no_user', { looked_for: preferred.join(', ') });
}

/** Whether that user can enter the folder: asked by trying, since every folder on the way has a say. */
export function canEnter(user: OsUser, folder: string): boolean {
  const { uid, gid } = user;
  return spawnSync('/bin/sh', ['-c', 'cd "$1"', 'sh', folder], { uid, gid, cwd: '/' }).status === 0;
}
