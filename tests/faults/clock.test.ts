import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { airReading, firstVisit, type Visitor } from '#bin/visitor.ts';
import { openBook } from '#db/connect.ts';
import { clocksNow } from '#db/device-clock.ts';
import { listSites, loadAll } from '#db/load.ts';
import { type Api, keepApi } from './api-process.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { panOfBeans } from './night-load.ts';
import { type OwnDatabase, ownDatabase } from './own-database.ts';
import { Phone } from './phone.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const hour = 3_600_000;
let database: OwnDatabase;
let api: Api;
let visitor: Visitor;

beforeAll(async () => {
  database = await ownDatabase();
  api = await keepApi(database.env);
  visitor = await firstVisit(api.url);
});
afterAll(async () => {
  await api.stop();
  await database.close();
});

test('a server whose clock jumps an hour ahead and back loses nothing; numbers go on, whatever the clock says (demand:13)', async () => {
  const phone = new Phone(visitor);
  for (const moved of [0, hour, -hour]) {
    await api.moveClock(moved);
    const { begin, posts } = panOfBeans(visitor, 20);
    await phone.postUntilTold(api.url, begin);
    await Promise.all(posts.map((drafts) => phone.postUntilTold(api.url, drafts)));
  }
  await expectBookKept(database.env, [phone]);
  const db = await openBook(database.env);
  const [site] = await listSites(db);
  const entries = (await loadAll(db, site?.site ?? '')).sort((a, b) => a.seq - b.seq);
  const times = entries.map(({ received_at }) => Date.parse(received_at));
  const steps = times.slice(1).map((time, n) => time - (times[n] ?? 0));
  expect(Math.max(...steps)).toBeGreaterThan(hour - 60_000); // the jump stands in the book as it was
  expect(Math.min(...steps)).toBeLessThan(-hour + 60_000);
  // The phone never moved: that its clock was an hour behind, then right again, is measured and kept.
  const measures = await db.sql<{ off_ms: string }[]>`select off_ms from device_clock order by at_ms`;
  const minutes = measures.map(({ off_ms }) => Math.round(Number(off_ms) / 60_000));
  expect(minutes.sort((a, b) => a - b)[0]).toBe(-60);
  await db.close();
});

test('a look of a phone an hour ahead is refused by name and kept there; when its time has come it is taken (demand:12)', async () => {
  const sent = { ...airReading(visitor, 400), at: new Date(Date.now() + hour).toISOString() };
  const post = async (offMs: number) => {
    const answer = await fetch(`${api.url}/api/entries?sent=${Date.now() + offMs}`, {
      method: 'POST',
      headers: visitor.headers,
      body: JSON.stringify([sent]),
    });
    const { receipts } = (await answer.json()) as {
      receipts: { seq: number | null; problem: { problem: string; field: string } | null }[];
    };
    return receipts[0];
  };
  expect(await post(hour)).toMatchObject({ seq: null, problem: { problem: 'reading_future', field: 'at' } });
  const db = await openBook(database.env);
  const [site] = await listSites(db);
  const [measure] = await clocksNow(db, site?.site ?? '', Date.now());
  expect(Math.round((measure?.offMs ?? 0) / 60_000)).toBe(60);
  await db.close();
  await api.moveClock(hour);
  expect((await post(hour))?.seq).toBeGreaterThan(0);
  await api.moveClock(-hour);
});
