import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { firstVisit, type Visitor } from '#bin/visitor.ts';
import { type Api, keepApi } from './api-process.ts';
import { cuttingProxy } from './cutting-proxy.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { panOfBeans } from './night-load.ts';
import { Phone } from './phone.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let data: string;
let env: NodeJS.ProcessEnv;
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
  data = mkdtempSync(join(tmpdir(), 'holdproof-network-'));
  chmodSync(data, 0o755);
  env = { ...process.env, DATABASE_URL: '', HOLDPROOF_DATABASE: '', HOLDPROOF_DATA: data };
  api = await keepApi(env);
  visitor = await firstVisit(api.url);
});
afterAll(async () => {
  await api.stop();
  rmSync(data, { recursive: true, force: true });
});

/** On the way up the head of the request is about 600 bytes; on the way down that of the answer about 150. */
const places = [
  ['before anything of it arrives', { up: 0 }],
  ['in the middle of what is sent', { up: 2000 }],
  ['before the first byte of the answer', { down: 0 }],
  ['in the head of the answer', { down: 60 }],
  ['in the middle of the receipts', { down: 1200 }],
] as const;

test.each(places)(
  'a connection cut %s: sent again, each entry is in the book once (demand:68)',
  async (_, where) => {
    const phone = newPhone();
    const proxy = await cuttingProxy(api.url);
    const { begin, posts } = panOfBeans(visitor, 10);
    const all = [...begin, ...posts.flat()]; // one post of 38 entries
    proxy.cut(where);
    expect(await phone.post(proxy.url, all)).toBe(false);
    expect(phone.told.size).toBe(0); // half an answer is none
    expect(await phone.post(proxy.url, all)).toBe(false);
    expect(proxy.cuts()).toBe(2);
    proxy.cut(null);
    await phone.postUntilTold(proxy.url, all);
    expect(phone.told.size).toBe(all.length);
    await expectBookKept(env, phones);
    await proxy.close();
  },
);

test('the same post by ten phones at once is in the book once, and all ten are told the same numbers', async () => {
  const { begin, posts } = panOfBeans(visitor, 60);
  const all = [...begin, ...posts.flat()];
  const ten = Array.from({ length: 10 }, newPhone);
  const answered = await Promise.all(ten.map((phone) => phone.post(api.url, all)));
  expect(answered).toEqual(Array(10).fill(true));
  const [first, ...others] = ten;
  expect(first?.told.size).toBe(all.length);
  for (const other of others) expect(other.told).toEqual(first?.told);
  await expectBookKept(env, phones);
});

test('an outbox that is sent backwards, with each entry twice, gives one entry each', async () => {
  const { begin, posts } = panOfBeans(visitor, 30);
  const phone = newPhone();
  await phone.postUntilTold(api.url, begin);
  const backwards = posts.slice(0, 30).reverse();
  for (const drafts of backwards) await phone.postUntilTold(api.url, [...drafts, ...drafts]);
  expect(phone.told.size).toBe(begin.length + 30);
  await expectBookKept(env, phones);
});
