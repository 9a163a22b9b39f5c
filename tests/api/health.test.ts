import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { GET as readBook } from '#app/api/book/route.ts';
import { POST as entries } from '#app/api/entries/route.ts';
import { GET } from '#app/api/health/route.ts';
import { noteRun, type Ran } from '#db/backup/log.ts';
import { clocksNow, clocksOff } from '#db/device-clock.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { appRole } from '#db/embedded/roles.ts';
import type { Health } from '#db/health.ts';
import { deviceFindings, findingsOf } from '#db/health-findings.ts';
import { headOf, listSites } from '#db/load.ts';
import { silent } from '#db/say.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { airReading, newKitchen, routesOnFreshBook } from './kitchen.ts';

let book: FreshBook;
let folder: string;

beforeAll(async () => {
  book = await routesOnFreshBook();
});
afterAll(() => book.close());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'holdproof-health-'));
  process.env.HOLDPROOF_BACKUPS = folder;
  return () => {
    delete process.env.HOLDPROOF_BACKUPS;
    rmSync(folder, { recursive: true });
  };
});

async function asked(language = 'en') {
  const headers = { cookie: `language=${language}` };
  const answer = await GET(new Request('http://kitchen.example/api/health', { headers }));
  return { status: answer.status, json: await answer.json() };
}

const ran = (at: number, ok: boolean): Ran => ({
  at: new Date(at).toISOString(),
  what: 'backup',
  ok,
  nightly: true,
  file: 'a',
  zone: 'America/Chicago',
  entries: 7,
  bytes: 900,
  sha256: 'ab',
  took_ms: 3,
  detail: ok ? null : 'ENOSPC',
});

test('an empty book is ready, has no chain, and nothing to back up', async () => {
  const { status, json } = await asked();
  expect(status).toBe(200);
  expect(json).toMatchObject({ live: true, ready: true, problems: [], heads: [] });
  expect(json.findings.map(({ key }: { key: string }) => key)).not.toContain('no_backup');
});

test('the end of the chain, durable commits, the disk and the database’s clock are said (demand:14)', async () => {
  await newKitchen();
  const { json } = await asked();
  const [site] = await listSites(book.db);
  expect(json.heads).toEqual([{ site: site?.site, ...(await headOf(book.db, site?.site ?? '')) }]);
  expect(json.durability).toEqual({ fsync: 'on', full_page_writes: 'on', synchronous_commit: 'on' });
  expect(json.disk.book_free_bytes).toBeGreaterThan(0);
  expect(json.disk.backups_free_bytes).toBeGreaterThan(0);
  expect(Math.abs(json.database_ahead_ms)).toBeLessThan(2000); // both are this machine
});

test('a server that leaves the backup to a timer says so, and does not promise one each night', async () => {
  const none = async () =>
    (await asked()).json.findings.find(({ key }: { key: string }) => key === 'no_backup').words.remedy;
  expect(await none()).toMatch(/^Leave the server running/);
  process.env.HOLDPROOF_NIGHTLY = 'off';
  expect(await none()).toMatch(/HOLDPROOF_NIGHTLY=off/);
  expect((await asked()).json.backup.nightly).toBe(false);
  delete process.env.HOLDPROOF_NIGHTLY;
});

test('the last backup is said; none, an old one and a failed one ask for a hand in both languages', async () => {
  const keys = async () => (await asked()).json.findings.map(({ key }: { key: string }) => key);
  expect(await keys()).toContain('no_backup');
  const now = Date.now();
  noteRun(process.env, ran(now - 30 * 3_600_000, true));
  expect(await keys()).toContain('backup_old');
  noteRun(process.env, ran(now - 60_000, false));
  const { json } = await asked('es');
  expect(json.backup).toMatchObject({ last: { entries: 7, bytes: 900, sha256: 'ab' }, due: false });
  expect(json.backup.failed_at).toBe(new Date(now - 60_000).toISOString());
  const words = json.findings.map((one: { words: { problem: string } }) => one.words.problem);
  expect(words.join(' ')).toMatch(/no se escribió: ENOSPC/);
  noteRun(process.env, ran(now, true));
  expect((await asked()).json.backup.failed_at).toBeNull();
  expect(await keys()).not.toContain('backup_old');
  expect(await keys()).not.toContain('backup_ahead');
  noteRun(process.env, ran(now + 300 * 86_400_000, true));
  expect(await keys()).toContain('backup_ahead');
  expect((await asked()).json.backup.last.at).toBe(new Date(now).toISOString());
});

test('a server that does not write to disk before it answers is not ready, and the setting is named', async () => {
  const kept = globalThis as { holdproofBook?: Promise<FreshBook['db']> };
  const { sockets } = settlePlace(book.env, silent);
  const options = { ...ownerOn(sockets, book.env.HOLDPROOF_DATABASE ?? ''), username: appRole };
  const careless = postgres({ ...options, connection: { synchronous_commit: 'off' } });
  kept.holdproofBook = Promise.resolve({ ...book.db, sql: careless });
  const { status, json } = await asked();
  kept.holdproofBook = Promise.resolve(book.db);
  await careless.end();
  expect(status).toBe(503);
  expect(json).toMatchObject({ live: true, ready: false, durability: { synchronous_commit: 'off' } });
  expect(json.findings[0].words.problem).toMatch(/synchronous_commit = off/);
});

test('a device’s clock is measured when it only asks for the book, too (demand:12)', async () => {
  const other = await routesOnFreshBook();
  const { tablet } = await newKitchen();
  const cookie = [...tablet.jar].map(([name, value]) => `${name}=${value}`).join('; ');
  const ask = (clock: Record<string, string>) =>
    readBook(new Request('http://kitchen.example/api/book', { headers: { cookie, ...clock } }));
  const [site] = await listSites(other.db);
  const measures = () => clocksNow(other.db, site?.site ?? '', Date.now());
  expect((await ask({})).status).toBe(200);
  expect(await measures()).toEqual([]);
  expect((await ask({ 'device-clock': String(Date.now() + 9 * 60_000) })).status).toBe(200);
  expect(Math.round(((await measures())[0]?.offMs ?? 0) / 60_000)).toBe(9);
  await other.close();
});

test('a device’s clock is measured when it sends, kept when it says something new, and named when it is off (demand:12)', async () => {
  const other = await routesOnFreshBook();
  const { tablet, owner } = await newKitchen();
  const post = (offMs: number, figure: number) =>
    tablet.post(entries, [airReading(owner.person, figure)], {}, `?sent=${Date.now() + offMs}`);
  const [site] = await listSites(other.db);
  const here = site?.site ?? '';
  const rows = async () => Number((await other.db.sql`select count(*) from device_clock`)[0]?.count);
  await post(7 * 60_000, 150);
  await post(7 * 60_000 + 500, 151);
  expect(await rows()).toBe(1);
  await post(-3 * 60_000, 152);
  expect(await rows()).toBe(2);
  const [last] = await clocksNow(other.db, here, Date.now());
  expect(Math.abs((last?.offMs ?? 0) + 3 * 60_000)).toBeLessThan(2000);
  expect(deviceFindings([{ name: 'pit tablet', offMs: last?.offMs ?? 0 }])).toEqual([
    { key: 'device_clock', values: { name: 'pit tablet', minutes: 3, way: 'behind' } },
  ]);
  const early = { ...airReading(owner.person, 149), id: '0199aaaa-0000-7000-8000-000000000001' };
  await tablet.post(entries, [early], {}, `?sent=${Date.now() - 20 * 60_000}`);
  await post(0, 148); // the clock was set: what came before keeps its mark
  const off = await clocksOff(other.db, here, [early.id], 60_000);
  expect([...off.keys()]).toEqual([early.id]);
  expect(Math.abs((off.get(early.id) ?? 0) + 20 * 60_000)).toBeLessThan(2000);
  expect((await clocksOff(other.db, here, [early.id], 21 * 60_000)).size).toBe(0);
  for (const nonsense of ['yesterday', '-5', '1e9', '9'.repeat(17)]) {
    const answer = await tablet.post(entries, [airReading(owner.person, 153)], {}, `?sent=${nonsense}`);
    expect(answer.status).toBe(200);
  }
  expect(await rows()).toBe(4);
  await other.close();
});

test('a disk below a gigabyte and a clock five seconds away ask for a hand; the same at the bound do not', () => {
  const health: Health = {
    now: 0,
    durability: { fsync: 'on', full_page_writes: 'on', synchronous_commit: 'on' },
    heads: [],
    databaseAheadMs: -5000,
    backup: {
      last: null,
      failed: null,
      tested: null,
      ahead: null,
      due: false,
      folder,
      nightly: true,
      shut: null,
      incidents: [],
    },
    free: { book: null, backups: 1_000_000_000 },
  };
  expect(findingsOf(health)).toEqual([]);
  const worse = { ...health, databaseAheadMs: -5001, free: { book: 999_999_999, backups: 2e9 } };
  expect(findingsOf(worse)).toEqual([
    { key: 'disk_low', values: { place: 'book', mb: 999 } },
    { key: 'database_clock', values: { seconds: 5, way: 'behind' } },
  ]);
  expect(deviceFindings([{ name: 'a', offMs: 59_999 }])).toEqual([]);
});
