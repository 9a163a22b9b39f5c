import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { runBackup } from '#bin/backup.ts';
import { keepNightly } from '#bin/nightly.ts';
import { runVerify } from '#bin/verify.ts';
import { nightlies, nightlyName } from '#db/backup/folder.ts';
import { backupState, noteRun, runs } from '#db/backup/log.ts';
import { dataFolder } from '#db/embedded/place.ts';
import { healthOf } from '#db/health.ts';
import { findingsOf } from '#db/health-findings.ts';
import { createSite } from '#db/ledger.ts';
import { clock, hand, reading, site } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

// Processes of their own write and restore: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 300_000, hookTimeout: 300_000 });

let book: FreshBook;
let folder: string;
let env: NodeJS.ProcessEnv;

beforeEach(async () => {
  book = await freshBook();
  folder = join(mkdtempSync(join(tmpdir(), 'holdproof-nightly-')), 'chosen');
  env = { ...book.env, LANG: 'C', LC_ALL: 'C', HOLDPROOF_BACKUPS: folder };
  await createSite(book.db, hand, [site(), reading(null, '158.0')], clock);
});
afterEach(async () => {
  rmSync(join(folder, '..'), { recursive: true });
  rmSync(join(dataFolder(env), 'backup-incidents.jsonl'), { force: true }); // the data folder is everybody's
  await book.close();
});

const day = 86_400_000;
const before = (daysAgo: number) => ({
  at: new Date(Date.now() - daysAgo * day).toISOString(),
  ok: true,
  nightly: true,
  file: 'earlier',
  zone: 'America/Chicago',
  entries: 1,
  bytes: 1,
  sha256: null,
  took_ms: 1,
  detail: null,
});

async function until(done: () => boolean): Promise<void> {
  const end = Date.now() + 240_000;
  while (!done()) {
    if (Date.now() > end) throw new Error('it did not happen within 240 s');
    await sleep(100);
  }
}

const said: string[] = [];
const nightly = (asked: NodeJS.ProcessEnv) =>
  runBackup(['--nightly'], { out: () => {}, err: (line) => void said.push(line), env: asked });

test('a running server writes the night that is due into the chosen folder, and clears out what is too old (demand:55)', async () => {
  noteRun(env, { ...before(2), what: 'backup' });
  noteRun(env, { ...before(1), what: 'restore_test' });
  // One a day for ten days: of these the eighth and older stay only as the last of a week or of a month.
  for (let n = 1; n <= 10; n += 1) writeFileSync(join(folder, nightlyName(Date.now() - n * day)), 'old');
  writeFileSync(join(folder, 'by-hand.jsonl.gz'), 'mine');
  const words: string[] = [];
  const quit = keepNightly({ env, say: (line) => words.push(line), everyMs: 50 });
  await until(() => words.length > 0);
  await quit();
  const { last, failed } = backupState(runs(env), Date.now());
  expect(failed).toBeNull();
  expect(last).toMatchObject({ ok: true, nightly: true, entries: 2, zone: 'America/Chicago' });
  const file = String(last?.file);
  expect(words.join('\n')).toMatch(/Nightly backup written to .*chosen/);
  expect(await runVerify([file], { out: () => {}, err: () => {}, env })).toBe(0);
  const names = readdirSync(folder);
  const left = nightlies(folder).length;
  expect(left).toBeGreaterThanOrEqual(7);
  expect(left).toBeLessThan(11);
  expect(names).toContain('by-hand.jsonl.gz');
  // It is not due any more: nothing comes of looking again.
  expect(await nightly(env)).toBe(0);
  expect(nightlies(folder)).toHaveLength(left);
});

test('a night that cannot be written is noted, said, and not tried again within the hour', async () => {
  noteRun(env, { ...before(2), what: 'backup' });
  const away = { ...env, HOLDPROOF_DATABASE: '', DATABASE_URL: 'postgres://a@127.0.0.1:1/nowhere' };
  const words: string[] = [];
  const quit = keepNightly({ env: away, say: (line) => words.push(line), everyMs: 50 });
  await until(() => backupState(runs(env), Date.now()).failed !== null);
  await sleep(300);
  await quit();
  expect(runs(env).filter(({ ok }) => !ok)).toHaveLength(1);
  expect(words.join('\n')).toMatch(/does not let us in/);
  expect(nightlies(folder)).toEqual([]);
});

test('a folder of backups that cannot be written is an incident with its cause, which stays when it is mended (demand:66)', async () => {
  writeFileSync(folder, 'a file where the folder should be'); // also who may do anything cannot write into it
  const health = () => healthOf(book.db, env);
  expect(findingsOf(await health()).map(({ key }) => key)).toContain('backups_shut');
  expect(await nightly(env)).toBe(1);
  const { failed } = backupState(runs(env), Date.now());
  expect(failed).toMatchObject({ what: 'backup', ok: false, nightly: true });
  expect(failed?.detail).toMatch(/EEXIST|ENOTDIR/);
  expect(findingsOf(await health()).map(({ key }) => key)).toContain('backup_failed');
  rmSync(folder);
  noteRun(env, { ...before(0), what: 'backup' });
  const after = await health();
  const keys = findingsOf(after).map(({ key }) => key);
  expect(keys).not.toContain('backups_shut');
  expect(keys).not.toContain('backup_failed');
  expect(after.backup.incidents.map(({ at }) => at)).toEqual([failed?.at]);
});

test('of two servers that look at once one writes', async () => {
  noteRun(env, { ...before(2), what: 'backup' });
  noteRun(env, { ...before(1), what: 'restore_test' });
  expect(await Promise.all([nightly(env), nightly(env)])).toEqual([0, 0]);
  expect(nightlies(folder)).toHaveLength(1);
  expect(runs(env).filter(({ what }) => what === 'backup')).toHaveLength(2); // the one of two days ago, and this
});

test('a server that is told to leave it alone does', async () => {
  const quit = keepNightly({ env: { ...env, HOLDPROOF_NIGHTLY: 'off' }, say: () => {}, everyMs: 20 });
  await sleep(200);
  await quit();
  expect(existsSync(folder)).toBe(false);
});
