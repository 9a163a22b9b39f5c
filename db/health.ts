import { accessSync, constants, existsSync, statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { nightlyDue } from './backup/due.ts';
import { backupFolder } from './backup/folder.ts';
import { type BackupState, backupState, incidents, type Ran, runs } from './backup/log.ts';
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
  backup: BackupState & {
    due: boolean;
    folder: string;
    /** Whether the server makes one each night; false = HOLDPROOF_NIGHTLY=off leaves it to somebody's timer. */
    nightly: boolean;
    /** Why nothing can be written into the folder, as the machine says it; null = it can, as far as can be told. */
    shut: string | null;
    /** What did not succeed in the last month, newest first. */
    incidents: Ran[];
  };
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
  const ran = runs(env);
  const backup = backupState(ran, now);
  const folder = backupFolder(env);
  return {
    now,
    durability,
    heads: heads.map(({ site, seq, hash }) => ({ site, seq: Number(seq), hash })),
    databaseAheadMs: Math.round(Number(row?.ms) - (asked + now) / 2),
    backup: {
      ...backup,
      due: nightlyDue(backup, now),
      folder,
      nightly: env.HOLDPROOF_NIGHTLY !== 'off',
      shut: whyShut(folder),
      incidents: incidents(ran, now),
    },
    free: { book: db.folder === null ? null : freeIn(db.folder), backups: freeIn(folder) },
  };
}

/** Why a folder cannot be written, or be made where it is to be; null = nothing speaks against it. */
function whyShut(folder: string): string | null {
  if (!existsSync(/* turbopackIgnore: true */ folder)) return whyShut(dirname(folder));
  try {
    accessSync(/* turbopackIgnore: true */ folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    return (error as Error).message;
  }
  return statSync(/* turbopackIgnore: true */ folder).isDirectory() ? null : `ENOTDIR: ${folder}`;
}

/** Bytes left on the disk of a folder; of the nearest one above that is there. */
function freeIn(folder: string): number {
  if (!existsSync(/* turbopackIgnore: true */ folder)) return freeIn(dirname(folder));
  const { bavail, bsize } = statfsSync(/* turbopackIgnore: true */ folder);
  return bavail * bsize;
}
