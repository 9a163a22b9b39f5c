import { resolve } from 'node:path';
import { BackupRefused } from '#db/backup/refused.ts';
import { restoreInto } from './backup/restore-into.ts';
import { backupRefusalWords, backupWords, misfitWords } from './backup/words.ts';
import { runTest } from './backup.ts';
import { type Io, terminal } from './io.ts';
import { progress } from './progress.ts';
import { languageOf, withBook } from './with-book.ts';

/**
 * `holdproof restore FILE`: puts a backup into an empty installation, all of it or nothing. `--test` puts it into
 * one that is thrown away.
 * @returns 0 restored, 1 refused or failed with nothing written, 3 no file named or the book was not opened
 */
export async function runRestore(args: string[], io: Io = terminal): Promise<number> {
  const locale = languageOf(io.env);
  const t = backupWords(locale);
  const files = args.filter((arg) => arg !== '--test');
  if (files.length !== 1 || files[0]?.startsWith('-')) {
    io.err(t('restore.use'));
    return 3;
  }
  const file = resolve(files[0] ?? '');
  if (args.includes('--test')) return (await runTest(file, false, io, locale)) ? 0 : 1;
  return withBook(io, async (db) => {
    io.err(t('restore.reading', { file }));
    const bar = progress(io, (done, count) => t('restore.filling', { done, count }));
    try {
      const { counts, sites, written_at } = await restoreInto(
        db,
        file,
        (misfit) => misfitWords(locale, misfit),
        bar.tell,
      );
      bar.end();
      io.err(t('restore.done', { count: counts.ledger ?? 0, sites: sites.length, at: written_at }));
      io.err(t('restore.restart'));
      return 0;
    } catch (error) {
      bar.end();
      if (!(error instanceof BackupRefused)) throw error;
      for (const line of backupRefusalWords(locale, error)) io.err(line);
      return 1;
    }
  });
}
