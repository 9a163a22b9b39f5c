import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { walkSite } from '#bin/verify/walk.ts';
import { openBook } from '#db/connect.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { appRole } from '#db/embedded/roles.ts';
import { append } from '#db/ledger.ts';
import { listSites, loadAll } from '#db/load.ts';
import { newestSchema, schemaOf } from '#db/migrate.ts';
import { BookRefused } from '#db/refused.ts';
import { silent } from '#db/say.ts';
import { sha256 } from '#db/sha256.ts';
import { refusalWords } from '#db/words.ts';
import { clock, hand, reading } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let shared: FreshBook; // keeps the server of the tests there
beforeAll(async () => {
  shared = await freshBook();
});
afterAll(() => shared.close());

/** A database as an earlier program left it, from its frozen SQL. */
async function asLeft(schema: number) {
  const database = `${shared.env.HOLDPROOF_DATABASE}_${schema}`;
  const { sockets } = settlePlace(shared.env, silent);
  const admin = shared.owner();
  await admin`create database ${admin(database)}`;
  const owner = postgres(ownerOn(sockets, database));
  await owner.unsafe(readFileSync(join(import.meta.dirname, `../fixtures/schema-${schema}.sql`), 'utf8'));
  return {
    owner,
    env: { ...shared.env, HOLDPROOF_DATABASE: database },
    drop: async () => {
      await owner.end();
      await admin`drop database ${admin(database)} with (force)`;
      await admin.end();
    },
  };
}

const kept = ['ledger', 'head', 'batch_life', 'signed_text', 'secret', 'device', 'sign_in'] as const;

async function rowsOf(owner: postgres.Sql): Promise<unknown[]> {
  return Promise.all(kept.map((table) => owner`select * from ${owner(table)} order by 1, 2`));
}

/** Tables that had seen so many migrations, each with seven entries and all that belongs to them. */
const released = [1, 2, 3, 4, 5];

describe('a book of an older program', () => {
  test.each(released)(
    'whose tables had seen %i migrations is brought forward once, row for row (demand:54)',
    async (schema) => {
      const old = await asLeft(schema);
      const before = await rowsOf(old.owner);
      const said: string[] = [];
      const db = await openBook(old.env, (key) => said.push(key));
      expect(said).toContain('migrating');
      expect(await schemaOf(db.sql)).toEqual(newestSchema());
      expect(await rowsOf(old.owner)).toEqual(before);
      const [site] = await listSites(db);
      const here = site?.site ?? '';
      expect(await loadAll(db, here)).toHaveLength(7);
      expect((await walkSite(db.sql, here, () => {})).misfit).toBeNull();
      // It goes on from there: the next entry is the eighth, and what there is cannot be changed, not by the owner.
      const [next] = await append(db, { ...hand, site: here }, [reading(null, '151')], clock);
      expect(next).toMatchObject({ status: 'written', seq: 8 });
      expect((await walkSite(db.sql, here, () => {})).misfit).toBeNull();
      await expect(old.owner`update ledger set body = '{}'`).rejects.toThrow(/append-only/);
      await expect(db.sql`delete from ledger`).rejects.toThrow(/permission denied/);
      await db.close();
      const again: string[] = [];
      await (await openBook(old.env, (key) => again.push(key))).close();
      expect(again).not.toContain('migrating');
      await old.drop();
    },
  );

  test('that was killed between the new tables and the rights to them is let in at the next opening', async () => {
    const old = await asLeft(2);
    await (await openBook(old.env)).close();
    await old.owner`revoke insert on device_clock from ${old.owner(appRole)}`;
    await old.owner`revoke delete on secret from ${old.owner(appRole)}`;
    const db = await openBook(old.env);
    const [row] = await db.sql`
      select has_table_privilege('device_clock', 'insert') and has_table_privilege('secret', 'delete') as has`;
    expect(row?.has).toBe(true);
    await expect(db.sql`delete from ledger`).rejects.toThrow(/permission denied/);
    await db.close();
    await old.drop();
  });

  test('that four programs open at once is brought forward once', async () => {
    const old = await asLeft(2);
    const books = await Promise.all([1, 2, 3, 4].map(() => openBook(old.env)));
    const [row] =
      await old.owner`select count(*)::int as all, count(distinct hash)::int as kinds from migration`;
    expect(row).toEqual({ all: newestSchema().number, kinds: newestSchema().number });
    for (const db of books) await db.close();
    await old.drop();
  });

  test('is found by what it names as its migrations: no released one was edited since', () => {
    const folder = join(import.meta.dirname, '../../db/migrations');
    const journal = JSON.parse(readFileSync(join(folder, 'meta/_journal.json'), 'utf8')) as {
      entries: { tag: string; when: number }[];
    };
    for (const schema of released) {
      const fixture = readFileSync(join(import.meta.dirname, `../fixtures/schema-${schema}.sql`), 'utf8');
      const named = [...fixture.matchAll(/INSERT INTO "migration" .* VALUES \('([0-9a-f]{64})', (\d+)\)/g)];
      expect(named).toHaveLength(schema);
      named.forEach(([, hash, when], n) => {
        const { tag = '', when: made } = journal.entries[n] ?? {};
        expect([hash, Number(when)]).toEqual([
          sha256(readFileSync(join(folder, `${tag}.sql`), 'utf8')),
          made,
        ]);
      });
    }
  });
});

test('a book of a newer program is refused in words, with both dates, and nothing in it is touched', async () => {
  const owner = shared.owner();
  await owner`insert into migration (hash, created_at) values ('later', ${Date.parse('2031-05-01T00:00Z')})`;
  const refused = await openBook(shared.env).then(
    async (db) => {
      await db.close();
      return null;
    },
    (error: unknown) => error,
  );
  const rows = await owner`select hash from migration where hash = 'later'`;
  await owner`delete from migration where hash = 'later'`;
  await owner.end();
  expect(refused).toBeInstanceOf(BookRefused);
  expect(rows).toHaveLength(1);
  const [english, remedy] = refusalWords('en', refused as BookRefused);
  const [spanish] = refusalWords('es', refused as BookRefused);
  expect(english).toMatch(/newer program .*2031-05-01/);
  expect(remedy).toMatch(/Use the newer program/);
  expect(spanish).toMatch(/2031-05-01/);
});
