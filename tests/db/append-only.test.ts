import type postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createSite } from '#db/ledger.ts';
import { loadAll } from '#db/load.ts';
import { storeSignedText } from '#db/signed-texts.ts';
import { clock, hand, reading, site } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let book: FreshBook;
let owner: postgres.Sql;
let here: string;

beforeAll(async () => {
  book = await freshBook();
  owner = book.owner();
  const made = await createSite(book.db, hand, [site(), reading(null, '158.0')], clock);
  if (made.site === null) throw new Error('the site was refused');
  here = made.site;
  await storeSignedText(book.db, here, '{"day":"2026-10-16"}');
});
afterAll(async () => {
  await owner.end();
  await book.close();
});

const changes = [
  `update ledger set body = '{}'`,
  'delete from ledger',
  'truncate ledger',
  `update signed_text set text = ''`,
  'delete from signed_text',
  'truncate signed_text',
];

describe('the database refuses to change what was written (demand:16)', () => {
  test.each(changes)('the application may not: %s', async (change) => {
    await expect(book.db.sql.unsafe(change)).rejects.toThrow(/permission denied for table/);
  });

  test.each(changes)('nor may the owner of the tables: %s', async (change) => {
    await expect(owner.unsafe(change)).rejects.toThrow(/append-only; a correction is a new entry/);
  });

  test('nor a session that says it only replays', async () => {
    const replay = owner.begin(async (tx) => {
      await tx`set local session_replication_role = replica`;
      await tx`delete from ledger`;
    });
    await expect(replay).rejects.toThrow(/append-only/);
  });

  test('the application may not switch the triggers off (demand:20)', async () => {
    await expect(book.db.sql`alter table ledger disable trigger all`).rejects.toThrow(/must be owner/);
  });

  test('nor drop the end of a chain', async () => {
    await expect(book.db.sql`delete from head`).rejects.toThrow(/permission denied/);
  });

  test('and after all of that the entries are still there (demand:23)', async () => {
    expect(await loadAll(book.db, here)).toHaveLength(2);
  });
});
