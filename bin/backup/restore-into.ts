import type postgres from 'postgres';
import { walkFile } from '#bin/verify/file.ts';
import { type Misfit, sitesOf, walkIn } from '#bin/verify/walk.ts';
import { fillFrom } from '#db/backup/fill.ts';
import { type OpenBackup, openBackup } from '#db/backup/read.ts';
import { BackupRefused } from '#db/backup/refused.ts';
import type { Db } from '#db/connect.ts';

type Progress = (done: number, count: number) => void;

/**
 * Restores a backup into an empty book: reads the whole file first, then writes it in one transaction, walks every
 * chain as it stands in the tables, and only then commits.
 * @param how the words for an entry that does not fit
 * @throws BackupRefused and nothing was written
 */
export async function restoreInto(
  db: Db,
  file: string,
  how: (misfit: Misfit) => string,
  progress: Progress,
): Promise<OpenBackup['manifest']> {
  await refuseBroken(file, how);
  const backup = await openBackup(file);
  await db.sql.begin(async (tx) => {
    await fillFrom(tx, backup, progress);
    for (const site of await sitesOf(tx as unknown as postgres.Sql)) {
      const { misfit } = await walkIn(tx, site, () => {});
      if (misfit !== null) throw broken(site, misfit, how);
    }
  });
  return backup.manifest;
}

async function refuseBroken(file: string, how: (misfit: Misfit) => string): Promise<void> {
  const { sites } = await walkFile(file, [], () => {});
  for (const [site, { misfit }] of sites) if (misfit !== null) throw broken(site, misfit, how);
}

const broken = (site: string, misfit: Misfit, how: (misfit: Misfit) => string) =>
  new BackupRefused('broken_chain', { site, seq: misfit.seq, how: how(misfit) });
