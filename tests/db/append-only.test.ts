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

  const attempts: [what: string, statement: string, refused: RegExp][] = [
    ['give the ledger another shape', 'alter table ledger add column x int', /must be owner/],
    ['rename the ledger', 'alter table ledger rename to other', /must be owner/],
    ['drop the ledger', 'drop table ledger', /must be owner/],
    ['drop the signed texts', 'drop table signed_text cascade', /must be owner/],
    ['drop the trigger', 'drop trigger ledger_append_only on ledger', /must be owner/],
    ['drop what the trigger does', 'drop function refuse_change() cascade', /must be owner/],
    [
      'make the trigger do nothing',
      `create or replace function refuse_change() returns trigger language plpgsql as 'begin return null; end'`,
      /permission denied|must be owner/,
    ],
    ['put a rule before it', 'create rule r as on insert to ledger do instead nothing', /must be owner/],
    ['drop an index', 'drop index ledger_site_at', /must be owner/],
    ['take the ledger over', 'alter table ledger owner to current_user', /must be owner/],
    ['become its owner', 'set role holdproof_owner', /permission denied/],
    ['become a superuser', 'alter role current_user superuser', /permission denied/],
    ['say that it only replays', 'set session_replication_role = replica', /permission denied/],
    ['drop all tables', 'drop schema public cascade', /must be owner/],
    ['make tables of its own', 'create table shadow (n int)', /permission denied/],
    ['stop writing to disk', 'alter system set fsync = off', /permission denied/],
    ['change what a device’s clock said', 'update device_clock set off_ms = 0', /permission denied/],
    ['forget what a device’s clock said', 'delete from device_clock', /permission denied/],
    ['say which migrations were made', `update migration set hash = ''`, /permission denied/],
  ];
  test.each(attempts)('the application may not %s (demand:20)', async (_, statement, refused) => {
    await expect(book.db.sql.unsafe(statement)).rejects.toThrow(refused);
  });

  test('the application may not hold the ledger shut', async () => {
    const shut = book.db.sql.begin((tx) => tx`lock table ledger in access exclusive mode`);
    await expect(shut).rejects.toThrow(/permission denied/);
  });

  test('a right that the application gives itself is none', async () => {
    await book.db.sql`grant update, delete, truncate on ledger to current_user`; // PostgreSQL warns and grants nothing
    const [row] = await book.db.sql`select has_table_privilege('ledger', 'update, delete, truncate') as may`;
    expect(row?.may).toBe(false);
  });

  test('its rights are these and no others, table by table', async () => {
    const rows = await owner<{ table: string; rights: string }[]>`
      select table_name as table, string_agg(privilege_type, ' ' order by privilege_type) as rights
      from information_schema.role_table_grants
      where grantee in ('holdproof_app', 'PUBLIC') and table_schema = 'public' group by 1 order by 1`;
    expect(Object.fromEntries(rows.map(({ table, rights }) => [table, rights]))).toEqual({
      batch_life: 'DELETE INSERT SELECT UPDATE',
      device: 'INSERT SELECT UPDATE',
      device_clock: 'INSERT SELECT',
      head: 'INSERT SELECT UPDATE',
      ledger: 'INSERT SELECT',
      migration: 'SELECT',
      seal: 'INSERT SELECT UPDATE',
      secret: 'DELETE INSERT SELECT UPDATE',
      sign_in: 'INSERT SELECT UPDATE',
      signed_text: 'INSERT SELECT',
    });
  });

  test('a second row under a number, or under an id, that is there is refused', async () => {
    const again = (set: string) =>
      book.db.sql.unsafe(
        `insert into ledger select (jsonb_populate_record(l, '${set}')).* from ledger l limit 1`,
      );
    await expect(again('{"id":"01990000-0000-7000-8000-0000000000aa"}')).rejects.toThrow(
      /ledger_site_seq_pk/,
    );
    await expect(again('{"seq":99}')).rejects.toThrow(/ledger_site_id/);
  });

  test('nor drop the end of a chain', async () => {
    await expect(book.db.sql`delete from head`).rejects.toThrow(/permission denied/);
  });

  test('and after all of that the entries are still there (demand:23)', async () => {
    expect(await loadAll(book.db, here)).toHaveLength(2);
  });
});
