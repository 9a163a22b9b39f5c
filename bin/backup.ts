import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { nightlyDue, restoreTestDue } from '#db/backup/due.ts';
import { backupFolder, nightlies, nightlyName, removable } from '#db/backup/folder.ts';
import { backupState, noteRun, type Ran, runs } from '#db/backup/log.ts';
import { BackupRefused } from '#db/backup/refused.ts';
import { type Written, writeBackup } from '#db/backup/write.ts';
import type { Db } from '#db/connect.ts';
import { listSites } from '#db/load.ts';
import { BookRefused } from '#db/refused.ts';
import { refusalWords } from '#db/words.ts';
import type { Language } from '#shared/words/messages.ts';
import { ownDump } from './backup/own-dump.ts';
import { testRestore } from './backup/test-restore.ts';
import { backupRefusalWords, backupWords, misfitWords } from './backup/words.ts';
import { type Io, terminal } from './io.ts';
import { progress } from './progress.ts';
import { languageOf, withBook } from './with-book.ts';

const options = ['--test', '--pg-dump', '--nightly'] as const;

/**
 * `holdproof backup FILE [--test] [--pg-dump]`: the whole book into one file, while it is in use. `--test` restores
 * it into a book that is thrown away. `--nightly` (no FILE) does what is due: a backup in the folder of backups,
 * older ones away, now and then a tested restore. Each run is noted in the folder's log.
 * @returns 0 done, 1 it could not be written or not be restored, 3 no file named or the book was not opened
 */
export async function runBackup(args: string[], io: Io = terminal): Promise<number> {
  const t = backupWords(languageOf(io.env));
  const files = args.filter((arg) => !arg.startsWith('--'));
  const asked = new Set(args.filter((arg) => arg.startsWith('--')));
  const unknown = [...asked].some((arg) => !(options as readonly string[]).includes(arg));
  const nightly = asked.has('--nightly');
  if (unknown || files.length !== (nightly ? 0 : 1)) {
    io.err(t('use'));
    return 3;
  }
  if (nightly) return runNightly(io);
  const file = resolve(files[0] ?? '');
  if (existsSync(file)) {
    io.err(t('exists', { file }));
    io.err(t('exists_remedy'));
    return 1;
  }
  const wants = { test: asked.has('--test'), dump: asked.has('--pg-dump'), nightly: false };
  return withBook(io, (db) => backupBook(db, file, wants, io));
}

type Wants = { test: boolean; dump: boolean; nightly: boolean };

async function backupBook(db: Db, file: string, wants: Wants, io: Io): Promise<number> {
  const locale = languageOf(io.env);
  const t = backupWords(locale);
  if ((await listSites(db)).length === 0) {
    io.err(t(wants.nightly ? 'nightly.empty' : 'empty'));
    return wants.nightly ? 0 : 1;
  }
  if ((await write(db, file, wants, io, locale)) === null) return 1;
  let status = 0;
  if (wants.dump) status = (await dump(file, io, locale)) ? 0 : 1;
  if (wants.test) status = (await runTest(file, wants.nightly, io, locale)) ? status : 1;
  return status;
}

async function write(
  db: Db,
  file: string,
  { nightly }: Wants,
  io: Io,
  locale: Language,
): Promise<Written | null> {
  const t = backupWords(locale);
  const started = Date.now();
  const bar = progress(io, (done, count) => t('writing', { done, count }));
  const ran = ranAt('backup', file, nightly);
  try {
    const written = await writeBackup(db.sql, file, started, bar.tell);
    bar.end();
    const { manifest, sha256, bytes } = written;
    const entries = manifest.counts.ledger ?? 0;
    const zone = manifest.sites[0]?.zone ?? null;
    note(io, { ...ran(), ok: true, zone, entries, bytes, sha256 });
    io.err(t('done', { count: entries, file, size: sizeWords(bytes) }));
    io.err(t('holds'));
    return written;
  } catch (error) {
    bar.end();
    const detail = (error as Error).message;
    note(io, { ...ran(), ok: false, detail });
    io.err(t('failed', { detail }));
    io.err(t('failed_remedy'));
    return null;
  }
}

/** A run that begins now; what it came to is filled in when it ends. */
function ranAt(what: Ran['what'], file: string, nightly: boolean): () => Ran {
  const started = Date.now();
  const nothing = { zone: null, entries: null, bytes: null, sha256: null, detail: null };
  return () => ({
    at: new Date(started).toISOString(),
    what,
    ok: false,
    nightly,
    file,
    ...nothing,
    took_ms: Date.now() - started,
  });
}

/** The log is a help and no condition: where it cannot be written the run's own words stand. */
function note(io: Io, ran: Ran): void {
  try {
    noteRun(io.env, ran);
  } catch (error) {
    io.err((error as Error).message);
  }
}

function sizeWords(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

async function dump(file: string, io: Io, locale: Language): Promise<boolean> {
  const t = backupWords(locale);
  const to = `${file}.pgdump`;
  const problem = await ownDump(io.env, to);
  if (problem === null) io.err(t('dumped', { file: to }));
  else if (problem === 'missing') io.err(t('no_pg_dump'));
  else io.err(t('pg_dump_failed', { detail: problem }));
  return problem === null || problem === 'missing';
}

/** Restores a backup into a book that is thrown away, says what came of it and notes it. */
export async function runTest(file: string, nightly: boolean, io: Io, locale: Language): Promise<boolean> {
  const t = backupWords(locale);
  const ran = ranAt('restore_test', file, nightly);
  const bar = progress(io, (done, count) => t('testing', { done, count }));
  const detail = await testRestore(file, io.env, (misfit) => misfitWords(locale, misfit), bar.tell).then(
    (line) => (line === null ? null : t('test_differs', { line })),
    (error: unknown) => said(error, locale),
  );
  bar.end();
  const { took_ms, ...rest } = ran();
  const bytes = existsSync(file) ? statSync(file).size : null;
  note(io, { ...rest, took_ms, ok: detail === null, bytes, detail });
  if (detail === null) io.err(t('tested', { seconds: (took_ms / 1000).toFixed(1) }));
  else io.err(t('test_failed', { detail }));
  return detail === null;
}

function said(error: unknown, locale: Language): string {
  if (error instanceof BackupRefused) return backupRefusalWords(locale, error).join(' ');
  if (error instanceof BookRefused) return refusalWords(locale, error).join(' ');
  return error instanceof Error ? error.message : String(error);
}

async function runNightly(io: Io): Promise<number> {
  const t = backupWords(languageOf(io.env));
  const now = Date.now();
  if (!isDue(io, now)) {
    io.err(t('nightly.not_due'));
    return 0;
  }
  const folder = backupFolder(io.env);
  const file = join(folder, nightlyName(now));
  const ran = ranAt('backup', file, true);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    const detail = (error as Error).message;
    note(io, { ...ran(), detail });
    io.err(t('failed', { detail }));
    return 1;
  }
  const status = await withBook(io, (db) => alone(db, io, () => nightly(db, file, now, io))).catch(
    (error: unknown) => {
      note(io, { ...ran(), detail: said(error, 'en') });
      io.err(t('failed', { detail: said(error, languageOf(io.env)) }));
      return 1;
    },
  );
  if (status === 3) note(io, { ...ran(), detail: t('failed', { detail: '' }).trim() });
  if (status === 0 && existsSync(file)) clearOut(folder, file, io);
  return status;
}

const isDue = (io: Io, now: number): boolean => nightlyDue(backupState(runs(io.env), now), now);

async function nightly(db: Db, file: string, now: number, io: Io): Promise<number> {
  if (!isDue(io, now)) return 0; // another server on this database has just made it
  const test = restoreTestDue(backupState(runs(io.env), now), now);
  return backupBook(db, file, { test, dump: false, nightly: true }, io);
}

const nightlyLock = 7_021_005; // number of the advisory lock, in the book's own database

/** Of several servers on one database one makes the night's backup; the others find that it is being made. */
async function alone(db: Db, io: Io, work: () => Promise<number>): Promise<number> {
  const own = await db.sql.reserve();
  try {
    const [row] = await own`select pg_try_advisory_lock(${nightlyLock}) as mine`;
    if (row?.mine === true) return await work();
    io.err(backupWords(languageOf(io.env))('nightly.under_way'));
    return 0;
  } finally {
    await own`select pg_advisory_unlock(${nightlyLock})`.catch(() => {});
    own.release();
  }
}

/** Older nightly backups that need not be kept, and what a killed backup left behind a day ago or longer. */
function clearOut(folder: string, file: string, io: Io): void {
  const old = removable(nightlies(folder), backupState(runs(io.env), Date.now()).last?.zone ?? 'UTC');
  for (const name of [...old, ...leftovers(folder)]) rmSync(join(folder, name), { force: true });
  io.err(backupWords(languageOf(io.env))('nightly.kept', { file, removed: old.length }));
}

const leftovers = (folder: string): string[] =>
  readdirSync(folder).filter(
    (name) =>
      /^holdproof-.*\.unfinished-\d+$/.test(name) &&
      Date.now() - statSync(join(folder, name)).mtimeMs > 86_400_000,
  );
