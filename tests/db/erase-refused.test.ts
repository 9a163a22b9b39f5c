import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type postgres from 'postgres';
import { v7 } from 'uuid';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { firstDifference } from '#bin/backup/test-restore.ts';
import { runBackup } from '#bin/backup.ts';
import { runErase } from '#bin/erase.ts';
import { runRestore } from '#bin/restore.ts';
import { runRetention } from '#bin/retention.ts';
import { walkSite } from '#bin/verify/walk.ts';
import { runVerify } from '#bin/verify.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { append } from '#db/ledger.ts';
import { loadAll } from '#db/load.ts';
import { silent } from '#db/say.ts';
import { storeSignedText } from '#db/signed-texts.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { isoOf, msOf } from '#shared/time.ts';
import { amendment, batchOf, draft, hand, minutes, reading, step } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';
import { longAgo, night, oldBook, signature, today } from './old-book.ts';

type Io = { out: (line: string) => void; err: (line: string) => void; env: NodeJS.ProcessEnv };
type Command = (args: string[], io: Io, clock: () => number) => Promise<number>;

async function ran(command: Command, env: NodeJS.ProcessEnv, ...args: string[]) {
  const said: string[] = [];
  const take = (line: string) => void said.push(line);
  const io = { out: take, err: take, env: { ...env, LANG: 'C', LC_ALL: 'C' } };
  const status = await command(args, io, () => today);
  return { status, said: said.join('\n') };
}

type Opened = { book: FreshBook; owner: postgres.Sql; here: string };
const opened: Opened[] = [];

/** A book of its own with the old kitchen in it, and more entries of then, each received when it was observed. */
async function opening(more: readonly Draft[] = []): Promise<Opened> {
  const book = await freshBook();
  const here = await oldBook(book);
  for (const one of more) await append(book.db, { ...hand, site: here }, [one], () => msOf(one.at));
  const open = { book, owner: book.owner(), here };
  opened.push(open);
  return open;
}

let shared: Opened;
beforeAll(async () => {
  shared = await opening();
});
afterEach(() => shut(1));
afterAll(() => shut(0));

async function shut(first: number): Promise<void> {
  for (const { owner, book } of opened.splice(first)) {
    await owner.end();
    await book.close();
  }
}

const rowsOf = ({ owner }: Opened) => owner`select * from ledger order by seq`;

describe('an erasure is refused, and nothing changes (demand:57)', () => {
  test('of what is younger than records are kept: the day two years ago stays (demand:23)', async () => {
    const before = await rowsOf(shared);
    // 26 November 2026 at 09:00 in Chicago: the operating day of 26 November 2024 is two years old.
    const late = await ran(runErase, shared.book.env, '--before', '2024-11-27', '--yes');
    expect(late.status).toBe(1);
    expect(late.said).toMatch(/kept for 2 years here, so the days from 2024-11-26 on cannot go yet/);
    const just = await ran(runErase, shared.book.env, '--before', '2024-11-26');
    expect(just.status).toBe(0);
    expect(await rowsOf(shared)).toEqual(before);
  });

  test('and by the years that the kitchen set by an entry, never fewer than two', async () => {
    const open = await opening();
    const { env } = open.book;
    const short = await ran(runRetention, env, '--years', '1', '--because', 'house rule');
    expect(short.status).toBe(1);
    expect(short.said).toMatch(/1 is less than 2 years, the least that this program keeps \(9 CFR 417\.5/);
    expect((await ran(runRetention, env)).said).toMatch(/2 years here, the least of this program/);
    const set = await ran(runRetention, env, '--years', '4', '--because', 'County code 12-7');
    expect(set.said).toMatch(/Entry 16 says in the book that records are kept for 4 years here: County code/);
    expect((await ran(runRetention, env)).said).toMatch(
      /kept for 4 years here \(County code 12-7\)\. Local law/,
    );
    const { status, said } = await ran(runErase, env, '--before', '2024-01-01', '--yes');
    expect(status).toBe(1);
    expect(said).toMatch(/kept for 4 years here, so the days from 2022-11-26 on cannot go yet/);
  });

  test('what came into the book late, after the term began, stays with all that is bound to it', async () => {
    const late = reading(null, '140.0', longAgo + minutes(45));
    const open = await opening();
    await append(open.book.db, { ...hand, site: open.here }, [late], () => today);
    const [third] = (await loadAll(open.book.db, open.here)).filter(({ seq }) => seq === 5);
    const correction = amendment(third?.id ?? '', 'value', '150.5', today);
    await append(open.book.db, { ...hand, site: open.here }, [correction], () => today);
    // The correction holds its reading, the reading its batch, and where all of its day stays the signature does.
    const all = await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    expect(all.status).toBe(1);
    expect(all.said).toMatch(/Nothing from before 2024-01-01 is left to erase/);
    const other = reading(null, '70.0', longAgo + minutes(50));
    await append(open.book.db, { ...hand, site: open.here }, [other], () => longAgo + minutes(50));
    const { status, said } = await ran(runErase, open.book.env, '--before', '2024-01-01');
    expect(said).toMatch(/2 entries of 1 day, 2023-03-10 to 2023-03-10.*with 1 signed sheet/);
    expect(said).toMatch(/6 older entries stay: what is newer is bound to them/);
    expect(status).toBe(0);
  });

  test('while food of that time is not gone', async () => {
    const batch = v7();
    const open = await opening([
      batchOf(batch, 1, longAgo + minutes(60)),
      step(batch, 'hot_hold', longAgo + minutes(61)),
    ]);
    const { status, said } = await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    expect(status).toBe(1);
    expect(said).toMatch(/A batch of that time is still open: BR-A, 2023-03-10\./);
    expect(said).toMatch(/Say in the book what became of the food/);
    expect(await open.owner`select from ledger where kind = 'erasure'`).toHaveLength(0);
  });

  test('while a deviation of that time was never answered', async () => {
    const open = await opening([
      draft(
        'deviation',
        {
          batch: null,
          pieces: null,
          step: null,
          equipment: null,
          probe: null,
          limit: null,
          found: null,
          last_good: null,
          since: null,
          since_basis: null,
          text: 'The door of cabinet 2 does not shut',
          lang: 'en',
        },
        longAgo + minutes(90),
      ),
    ]);
    const { status, said } = await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    expect(status).toBe(1);
    expect(said).toMatch(/A deviation of that time was never answered: 2023-03-10\./);
  });

  test('for a day that is none, an unknown option, a person who may not', async () => {
    const { env } = shared.book;
    expect((await ran(runErase, env, '--before', '2023-02-30')).status).toBe(3);
    expect((await ran(runErase, env, '--before', '2023-02-03', '--force')).status).toBe(3);
    const who = await ran(runErase, env, '--before', '2024-01-01', '--by', 'Nobody');
    expect(who).toEqual({
      status: 3,
      said: 'Whose decision is it? Name one with --by: Orla Quint.',
    });
  });
});

describe('only the owner’s database role erases (demand:57 demand:20)', () => {
  const urlOf = (role: string): string => {
    const { sockets } = settlePlace(shared.book.env, silent);
    return `postgres://${role}@/${shared.book.env.HOLDPROOF_DATABASE}?host=${sockets}`;
  };
  const byUrl = (owner: string): NodeJS.ProcessEnv => ({
    ...shared.book.env,
    DATABASE_URL: urlOf('holdproof_app'),
    DATABASE_OWNER_URL: owner,
  });

  test.each([
    ['none is named', () => byUrl(''), /no owner is named.*DATABASE_OWNER_URL/s],
    [
      'the application’s own is named',
      () => byUrl(urlOf('holdproof_app')),
      /role holdproof_app does not own/,
    ],
  ])('where %s it says so and changes nothing', async (_, env, says) => {
    const before = await rowsOf(shared);
    const { status, said } = await ran(runErase, env(), '--before', '2024-01-01', '--yes');
    expect(status).toBe(3);
    expect(said).toMatch(says);
    expect(await rowsOf(shared)).toEqual(before);
  });

  const toDigest = (where: string) => `update ledger set subject = null, target = null, day = null,
    body = 'sha256:' || encode(sha256(convert_to(body, 'UTF8')), 'hex') where ${where}`;

  test('the application may not, not even in the manner of an erasure', async () => {
    await expect(shared.book.db.sql.unsafe(toDigest('seq = 5'))).rejects.toThrow(/permission denied/);
  });

  test('nor the owner without an entry that names it, nor with one what is younger than two years', async () => {
    await expect(shared.owner.unsafe(toDigest('seq = 5'))).rejects.toThrow(/append-only/);
    const open = await opening();
    await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    const forged = open.owner.begin(async (tx) => {
      await tx`insert into ledger select site, 17, gen_random_uuid(), kind, version, at, entered_at, received_at, by,
        known, device, replace(body, '"ranges":[[3,9]]', '"ranges":[[3,15]]'), hash, hash, at_ms, subject, target, day
        from ledger where seq = 16`;
      await tx.unsafe(toDigest('seq = 12'));
    });
    await expect(forged).rejects.toThrow(/append-only/);
    // What is named and old may become its digest, and nothing else.
    await expect(open.owner`update ledger set body = '{}', subject = null where seq = 5`).rejects.toThrow(
      /append-only/,
    );
    await expect(open.owner`delete from signed_text`).resolves.toBeDefined(); // there is none left
  });

  test('nor is an erasure of young entries believed when every trigger was off', async () => {
    const open = await opening();
    await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    await open.owner`alter table ledger disable trigger all`;
    // Another entry of then goes, and the erasure is made to say that it went a year after it came.
    await open.owner`update ledger set received_at = '2024-03-01T00:00:00Z' where seq = 16`;
    await open.owner`alter table ledger enable always trigger ledger_erase_only`;
    const { status, said } = await ran((given, io) => runVerify(given, io), open.book.env);
    expect(said).toMatch(
      /entry 3 does not fit: it was erased by entry 16 at 2024-03-01T00:00:00Z, less than 2 years/,
    );
    expect(status).toBe(1);
  });
});

describe('a book of which something was erased', () => {
  test('is backed up and restored with the same lines, and the file says what went (demand:56 demand:57)', async () => {
    const open = await opening();
    const folder = mkdtempSync(join(tmpdir(), 'holdproof-erase-'));
    const env = { ...open.book.env, HOLDPROOF_BACKUPS: folder };
    await ran(runErase, env, '--before', '2024-01-01', '--yes');
    const file = join(folder, 'one.jsonl.gz');
    await ran(runBackup, env, file);
    const checked = await ran((given, io) => runVerify(given, io), env, file);
    expect(checked.status).toBe(0);
    expect(checked.said).toMatch(/by Orla Quint \(entry 16\): the text of 7 entries between numbers 3 and 9/);
    const empty = await freshBook();
    const restored = await ran(runRestore, { ...empty.env, HOLDPROOF_BACKUPS: folder }, file);
    expect(restored.said).toMatch(/restored from the backup/);
    const again = join(folder, 'two.jsonl.gz');
    await ran(runBackup, { ...empty.env, HOLDPROOF_BACKUPS: folder }, again);
    expect(await firstDifference(file, again)).toBeNull();
    const { misfit } = await walkSite(empty.db.sql, open.here, () => {});
    expect(misfit).toBeNull();
    await empty.close();
    rmSync(folder, { recursive: true });
  });

  test('is erased from again a year later: each erasure keeps its own digest', async () => {
    const second = msOf('2024-02-02T18:00:00Z');
    const open = await opening(night(v7(), second));
    await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    const { said } = await ran(runErase, open.book.env, '--before', '2024-06-01', '--yes');
    expect(said).toMatch(/6 entries of 1 day, 2024-02-02 to 2024-02-02/);
    const { misfit, erased } = await walkSite(open.book.db.sql, open.here, () => {});
    expect(misfit).toBeNull();
    expect(erased.map(({ seq, first, last, count }) => ({ seq, first, last, count }))).toEqual([
      { seq: 22, first: 3, last: 9, count: 7 },
      { seq: 23, first: 16, last: 21, count: 6 },
    ]);
  });

  test('keeps a signed day whole while its signature is younger than the term', async () => {
    const day = msOf('2024-11-20T18:00:00Z');
    const open = await opening(night(v7(), day));
    const hash = await storeSignedText(open.book.db, open.here, '{"day":"2024-11-20"}');
    const late = signature('2024-11-20', hash, today);
    await append(open.book.db, { ...hand, site: open.here }, [late], () => today);
    const { said } = await ran(runErase, open.book.env, '--before', '2024-11-26');
    expect(said).toMatch(/7 entries of 1 day, 2023-03-10 to 2023-03-10/);
    expect(said).toMatch(/6 older entries stay: what is newer is bound to them/);
  });

  test('keeps what later days are read with: the last three checks of a thermometer', async () => {
    const probe = v7();
    const check = (n: number) =>
      draft(
        'probe_check',
        {
          probe,
          bath: 'ice',
          typed: '32.0',
          value: 32,
          unit: 'degF',
          expected: 32,
          accuracy: null,
          note: null,
        },
        longAgo + minutes(60 * 24 * n),
      );
    const open = await opening([1, 2, 3, 4].map(check));
    await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes');
    const left = (await loadAll(open.book.db, open.here)).filter(({ kind }) => kind === 'probe_check');
    expect(left.map(({ at }) => at)).toEqual([2, 3, 4].map((n) => isoOf(longAgo + minutes(60 * 24 * n))));
  });
});

describe('an erasure that is killed half way', () => {
  test('leaves nothing half done: no entry that says so, no body gone, chain whole (demand:57)', async () => {
    const open = await opening();
    const before = await rowsOf(open);
    const other = open.book.owner();
    let free = () => {};
    const held = new Promise<void>((resolve) => {
      free = resolve;
    });
    let holds = () => {};
    const holding = new Promise<void>((resolve) => {
      holds = resolve;
    });
    // Somebody holds the last row that has to go: the erasure stands in the middle of its work.
    const blocker = other.begin(async (tx) => {
      await tx`select from ledger where seq = 9 for update`;
      holds();
      await held;
    });
    await holding;
    const child = spawn(
      process.execPath,
      [join(import.meta.dirname, '../../bin/holdproof.ts'), 'erase', '--before', '2024-01-01', '--yes'],
      { env: { ...open.book.env, LANG: 'C', LC_ALL: 'C' }, stdio: 'ignore' },
    );
    const exit = once(child, 'exit');
    await until(async () => {
      const [row] = await open.owner`select count(*)::int as waiting from pg_stat_activity
        where datname = current_database() and wait_event_type = 'Lock' and query like '%update ledger set body%'`;
      return row?.waiting > 0;
    });
    child.kill('SIGKILL');
    await exit;
    free();
    await blocker;
    await other.end();
    await until(async () => {
      const [row] = await open.owner`select count(*)::int as left from pg_stat_activity
        where datname = current_database() and query like '%update ledger set body%' and pid <> pg_backend_pid()
          and state <> 'idle'`;
      return row?.left === 0;
    });
    expect(await rowsOf(open)).toEqual(before);
    const { misfit, end } = await walkSite(open.book.db.sql, open.here, () => {});
    expect(misfit).toBeNull();
    expect(end.seq).toBe(15);
    expect((await ran(runErase, open.book.env, '--before', '2024-01-01', '--yes')).status).toBe(0);
  });
});

async function until(so: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 600; tries += 1) {
    if (await so()) return;
    await sleep(100);
  }
  throw new Error('it did not come to that within a minute');
}
