import { v7 } from 'uuid';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { POST } from '#app/api/entries/route.ts';
import type { Receipt } from '#shared/receipt.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { airReading, newKitchen, routesOnFreshBook } from './kitchen.ts';

let book: FreshBook;
let kitchen: Awaited<ReturnType<typeof newKitchen>>;
beforeAll(async () => {
  book = await routesOnFreshBook();
  kitchen = await newKitchen();
});
afterAll(() => book.close());

/** Transactions that were committed in this database so far, as PostgreSQL counts the ones that wrote. */
async function commits(): Promise<number> {
  const [row] = await book.db.sql<{ count: string }[]>`
    select count(distinct xmin::text) as count from ledger`;
  return Number(row?.count);
}

test('the same look from two phones at the same moment: one is written, the other asked about, however they fall', async () => {
  const { tablet, owner } = kitchen;
  for (let tries = 0; tries < 10; tries += 1) {
    const one = airReading(owner.person);
    const twin = { ...one, id: v7() };
    const answers = await Promise.all([tablet.post(POST, [one]), tablet.post(POST, [twin])]);
    const receipts = answers.map(({ json }) => (json.receipts as Receipt[])[0]);
    expect(receipts.map((receipt) => receipt?.problem?.problem ?? null).sort()).toEqual(['duplicate', null]);
  }
});

test('forty posts at the same moment take far fewer commits, and each gets its own receipts', async () => {
  const { tablet, owner } = kitchen;
  const posts = Array.from({ length: 40 }, () => [airReading(owner.person), airReading(owner.person)]);
  const before = await commits();
  const answers = await Promise.all(posts.map((drafts) => tablet.post(POST, drafts)));
  for (const [n, { json }] of answers.entries()) {
    const receipts = json.receipts as Receipt[];
    expect(receipts.map(({ id }) => id)).toEqual(posts[n]?.map(({ id }) => id));
    expect(receipts.every(({ seq }) => seq !== null)).toBe(true);
  }
  expect((await commits()) - before).toBeLessThan(20);
});
