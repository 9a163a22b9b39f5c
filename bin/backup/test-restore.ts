import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Misfit } from '#bin/verify/walk.ts';
import { linesOf } from '#db/backup/lines.ts';
import { writeBackup } from '#db/backup/write.ts';
import { openBook } from '#db/connect.ts';
import { restoreInto } from './restore-into.ts';

/**
 * Restores a backup into an empty embedded database that is thrown away after, and reads it back.
 * @returns the number of the first line after the manifest that reads back differently; null = all are the same
 * @throws BackupRefused, BookRefused and the machine's own faults: the restore did not succeed
 */
export async function testRestore(
  file: string,
  env: NodeJS.ProcessEnv,
  how: (misfit: Misfit) => string,
  progress: (done: number, count: number) => void,
): Promise<number | null> {
  const folder = mkdtempSync(join(tmpdir(), 'holdproof-restore-test-'));
  chmodSync(folder, 0o755); // as root the database runs as another user, who must come in
  const away = {
    ...env,
    DATABASE_URL: '',
    DATABASE_OWNER_URL: '',
    HOLDPROOF_DATABASE: '',
    HOLDPROOF_DATA: folder,
  };
  try {
    const db = await openBook(away);
    try {
      await restoreInto(db, file, how, progress);
      const again = join(folder, 'again.jsonl.gz');
      await writeBackup(db.sql, again, Date.now(), () => {});
      return await firstDifference(file, again);
    } finally {
      await db.close();
    }
  } finally {
    throwAway(folder);
  }
}

/** The data may lie elsewhere, which a note in the folder says. */
function throwAway(folder: string): void {
  const note = join(folder, 'place.txt');
  if (existsSync(note)) rmSync(readFileSync(note, 'utf8').trim(), { recursive: true, force: true });
  rmSync(folder, { recursive: true, force: true });
}

/** Compares two backups line by line, but for their manifests and their digests, which name the moment. */
export async function firstDifference(one: string, other: string): Promise<number | null> {
  const theirs = linesOf(other);
  await theirs.next();
  let number = 0;
  for await (const line of linesOf(one)) {
    number += 1;
    if (number === 1) continue;
    const { value } = await theirs.next();
    if (line !== value && !line.startsWith('{"end":')) return number;
  }
  return (await theirs.next()).done ? null : number + 1;
}
