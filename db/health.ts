import { existsSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { nightlyDue } from './backup/due.ts';
import { backupFolder } from './backup/folder.ts';
import { type BackupState, backupState, runs } from './backup/log.ts';
import { type Durability, durabilityOf } from './conditions.ts';
import type { Db } from './connect.ts';

/** The end of a site's chain, as a sheet prints it. */
export type Head = { site: string; seq: number; hash: string };

/** How the book stands, as the database, the folder of backups and the disk say it. */
export type Health = {
  /** The server's clock when it was asked, ms. */
  now: number;
  durability: Durability;
  heads: Head[];
  /** The database's clock minus the server's, ms. Exact to the time that the question took. */
  databaseAheadMs: number;
  backup: BackupState & { due: boolean; folder: string };
  /** Bytes that this program may still write where the book lies (null = a database elsewhere) and the backups. */
  free: { book: number | null; backups: number };
};

/** Asks how the book stands. @throws the database's own faults */
export async function healthOf(
  db: Db,
  env: NodeJS.ProcessEnv = process.env,
  clock: () => number = Date.now,
): Promise<Health> {
  const heads = await db.sql<{ site: string; seq: string; hash: string }[]>`
    select site, seq, hash from head order by site`;
  const durability = await durabilityOf(db.sql);
  const asked = clock();
  const [row] = await db.sql`select extract(epoch from clock_timestamp()) * 1000 as ms`;
  const now = clock();
  const backup = backupState(runs(env));
  const folder = backupFolder(env);
  return {
    now,
    durability,
    heads: heads.map(({ site, seq, hash }) => ({ site, seq: Number(seq), hash })),
    databaseAheadMs: Math.round(Number(row?.ms) - (asked + now) / 2),
    backup: { ...backup, due: nightlyDue(backup, now), folder },
    free: { book: db.folder === null ? null : freeIn(db.folder), backups: freeIn(folder) },
  };
}

/** Bytes left on the disk of a folder; of the nearest one above that is there. */
function freeIn(folder: string): number {
  if (!existsSync(/* turbopackIgnore: true */ folder)) return freeIn(dirname(folder));
  const { bavail, bsize } = statfsSync(/* turbopackIgnore: true */ folder);
  return bavail * bsize;
}
