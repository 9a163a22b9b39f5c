import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { firstVisit, type Visitor } from '#bin/visitor.ts';
import { type Api, keepApi } from './api-process.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { panOfBeans } from './night-load.ts';
import { type OwnDatabase, ownDatabase } from './own-database.ts';
import { Phone } from './phone.ts';

vi.setConfig({ testTimeout: 300_000, hookTimeout: 240_000 });

const awaySeconds = Number(process.env.HOLDPROOF_FAULT_AWAY_S ?? 4);

let database: OwnDatabase;
let api: Api;
let visitor: Visitor;
/** All that wrote in this book: whatever else is in it came from nowhere. */
const phones: Phone[] = [];

function newPhone(): Phone {
  const phone = new Phone(visitor);
  phones.push(phone);
  return phone;
}

beforeAll(async () => {
  database = await ownDatabase();
  api = await keepApi(database.env);
  visitor = await firstVisit(api.url);
});
afterAll(async () => {
  await api.stop();
  await database.close();
});

test(`a database that is away for ${awaySeconds} s: said in words, nothing acknowledged is lost, and all is taken after`, async () => {
  const phone = newPhone();
  const { begin, posts } = panOfBeans(visitor, 60);
  await phone.postUntilTold(api.url, begin);
  const sending = Promise.all(
    posts.map(async (drafts, n) => {
      await sleep(n * 20);
      await phone.postUntilTold(api.url, drafts, (awaySeconds + 120) * 1000);
    }),
  );
  await sleep(300);
  await database.stop();
  const toldThen = phone.told.size;
  expect(toldThen).toBeLessThan(begin.length + posts.flat().length);
  const away = Date.now();
  const said = new Set<string>();
  const elapsed = () => Date.now() - away;
  // On a busy machine the server itself may need seconds to come back and say so.
  while (elapsed() < awaySeconds * 1000 || (!said.has('database_unreachable') && elapsed() < 60_000)) {
    said.add(await problemOf(api.url));
    await sleep(250);
  }
  expect(said).toContain('database_unreachable');
  expect(phone.told.size).toBe(toldThen);
  await database.start();
  await sending;
  expect(phone.told.size).toBe(begin.length + posts.flat().length);
  await expectBookKept(database.env, phones);
});

/** What a watcher is told; '' when the server itself is being started again. */
async function problemOf(url: string): Promise<string> {
  try {
    const answer = await fetch(`${url}/api/health`, { signal: AbortSignal.timeout(10_000) });
    expect(answer.status).toBe(503);
    const { problems } = (await answer.json()) as { problems: { problem: string }[] };
    return problems[0]?.problem ?? '';
  } catch (error) {
    // fetch: the connection was refused, or the answer takes long on a busy machine
    if (error instanceof TypeError || (error as Error).name === 'TimeoutError') return '';
    throw error;
  }
}

test('two servers on one database: posts to either and the same to both give one chain, each entry once', async () => {
  const second = await keepApi(database.env);
  const [both, here, there] = [newPhone(), newPhone(), newPhone()];
  const [shared, one, other] = [panOfBeans(visitor, 10), panOfBeans(visitor, 10), panOfBeans(visitor, 10)];
  const send = async (phone: Phone, url: string, { begin, posts }: typeof shared) => {
    await phone.postUntilTold(url, begin);
    await Promise.all(posts.map((drafts) => phone.postUntilTold(url, drafts)));
  };
  await Promise.all([
    send(both, api.url, shared),
    send(both, second.url, shared),
    send(here, api.url, one),
    send(there, second.url, other),
  ]);
  const count = shared.begin.length + shared.posts.flat().length;
  expect([both, here, there].map(({ told }) => told.size)).toEqual([count, count, count]);
  await second.stop();
  await expectBookKept(database.env, phones);
});
