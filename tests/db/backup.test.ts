import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { firstDifference } from '#bin/backup/test-restore.ts';
import { runBackup } from '#bin/backup.ts';
import { runRestore } from '#bin/restore.ts';
import { runVerify } from '#bin/verify.ts';
import { openBackup } from '#db/backup/read.ts';
import { fillDemo } from '#db/demo/fill.ts';
import { enrolDevice, openSignIn } from '#db/devices.ts';
import { append } from '#db/ledger.ts';
import { loadAll } from '#db/load.ts';
import { sealKey } from '#db/seal.ts';
import { sha256 } from '#db/sha256.ts';
import { clock, cook, hand, reading, tablet } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let book: FreshBook;
let here: string;
const folder = mkdtempSync(join(tmpdir(), 'holdproof-backup-'));
const file = join(folder, 'book.jsonl.gz');
const asks = (env: NodeJS.ProcessEnv) => ({
  ...env,
  LANG: 'C',
  LC_ALL: 'C',
  HOLDPROOF_BACKUPS: join(folder, 'log'),
});

async function ran(command: typeof runBackup, env: NodeJS.ProcessEnv, ...args: string[]) {
  const said: string[] = [];
  const take = (line: string) => void said.push(line);
  const status = await command(args, { out: take, err: take, env: asks(env) });
  return { status, said };
}

beforeAll(async () => {
  book = await freshBook();
  ({ site: here } = await fillDemo(book.db, { fixed: true, now: Date.parse('2026-10-18T12:00:00Z') }));
  await enrolDevice(book.db, { site: here, device: tablet, name: 'Pit tablet' }, clock);
  await openSignIn(book.db, { site: here, device: tablet, person: cook, how: 'secret' }, clock);
  await sealKey(book.db);
  expect((await ran(runBackup, book.env, file)).status).toBe(0);
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await book.close();
});

const linesOf = (path: string): string[] => gunzipSync(readFileSync(path)).toString('utf8').split('\n');

/** A backup of these lines, with a digest that fits. */
function backupOf(lines: readonly string[]): string {
  const path = join(folder, `${v7()}.jsonl.gz`);
  const said = `${lines.join('\n')}\n`;
  const end = JSON.stringify({ end: { lines: lines.length, sha256: sha256(said) } });
  writeFileSync(path, gzipSync(`${said}${end}\n`));
  return path;
}

/** A new empty book for one restore. */
async function restoredFrom(path: string) {
  const empty = await freshBook();
  const { status, said } = await ran(runRestore, empty.env, path);
  return { ...empty, status, said };
}

describe('a backup', () => {
  test('says of itself what it is, and only its owner may read it', () => {
    const [first = '', ...rest] = linesOf(file);
    const manifest = JSON.parse(first);
    expect(manifest.format).toBe('holdproof-backup/1');
    expect(manifest.sites).toEqual([{ site: here, name: 'Lantern Ditch Barbecue', zone: 'America/Chicago' }]);
    expect(manifest.counts).toMatchObject({ device: 1, sign_in: 1, seal: 1, signed_text: 1 });
    const end = JSON.parse(rest.at(-2) ?? '').end;
    expect(end.sha256).toBe(sha256(`${[first, ...rest.slice(0, -2)].join('\n')}\n`));
    expect(statSync(file).mode & 0o077).toBe(0);
  });

  test('restored into an empty book and backed up again has the same lines (demand:56)', async () => {
    const again = await restoredFrom(file);
    expect(again.said.at(-2)).toMatch(/restored from the backup/);
    expect(again.status).toBe(0);
    const second = join(folder, 'second.jsonl.gz');
    await ran(runBackup, again.env, second);
    expect(await firstDifference(file, second)).toBeNull();
    expect(await loadAll(again.db, here)).toEqual(await loadAll(book.db, here));
    expect((await ran(runVerify, again.env)).status).toBe(0);
    await again.close();
  });

  test('is one moment of the book, whatever is written meanwhile', async () => {
    const writer = { ...hand, site: here };
    let writing = true;
    const posts = (async () => {
      while (writing) {
        await append(book.db, writer, [reading(null, '158.0'), reading(null, '157.0')], clock);
      }
    })();
    for (const n of [1, 2, 3]) {
      const path = join(folder, `busy-${n}.jsonl.gz`);
      expect((await ran(runBackup, book.env, path)).status).toBe(0);
      expect((await ran(runVerify, book.env, path)).status).toBe(0);
      const { manifest } = await openBackup(path);
      expect(manifest.heads[0]?.seq).toBe(manifest.counts.ledger);
    }
    writing = false;
    await posts;
  });

  test('is tested by restoring it into a book that is thrown away, and the result is noted (demand:55)', async () => {
    const { status, said } = await ran(runRestore, book.env, file, '--test');
    expect(said.at(-1)).toMatch(/every line the same, every chain whole/);
    expect(status).toBe(0);
    const notes = readFileSync(join(folder, 'log', 'log.jsonl'), 'utf8')
      .trimEnd()
      .split('\n');
    expect(JSON.parse(notes.at(-1) ?? '')).toMatchObject({ what: 'restore_test', ok: true, file });
  });

  test('never overwrites a file, and leaves nothing half-written where it cannot write', async () => {
    const before = readFileSync(file);
    expect((await ran(runBackup, book.env, file)).status).toBe(1);
    expect(readFileSync(file)).toEqual(before);
    const nowhere = join(folder, 'no', 'book.jsonl.gz');
    const { status, said } = await ran(runBackup, book.env, nowhere);
    expect(status).toBe(1);
    expect(said[0]).toMatch(/was not written: ENOENT/);
    expect(existsSync(join(folder, 'no'))).toBe(false);
  });

  test('of tables that had seen four migrations is restored whole, line for line (demand:56)', async () => {
    const old = join(import.meta.dirname, '../fixtures/backup-schema-4.jsonl.gz');
    const { manifest } = await openBackup(old);
    expect(manifest.schema.number).toBe(4);
    const again = await restoredFrom(old);
    expect(again.status).toBe(0);
    const second = join(folder, 'from-old.jsonl.gz');
    await ran(runBackup, again.env, second);
    expect(await firstDifference(old, second)).toBeNull();
    expect((await ran(runVerify, again.env, '--head', old)).status).toBe(0);
    await again.close();
  });
});

describe('a file that is not whole is refused in words, and nothing of it is restored', () => {
  const whole = () => linesOf(file).slice(0, -2);
  const changed = (from: RegExp, to: string) => whole().map((line) => line.replace(from, to));
  const cases: { what: string; make: () => string; says: RegExp }[] = [
    { what: 'not there', make: () => join(folder, 'none'), says: /cannot be read: ENOENT/ },
    {
      what: 'another kind of file',
      make: () => {
        const path = join(folder, 'other.txt');
        writeFileSync(path, 'Dear inspector,\n');
        return path;
      },
      says: /not a backup of Holdproof/,
    },
    {
      what: 'gzip cut in the middle',
      make: () => {
        const path = join(folder, 'cut.gz');
        writeFileSync(path, readFileSync(file).subarray(0, 60_000));
        return path;
      },
      says: /ends before its end/,
    },
    {
      what: 'a line removed, digest made to fit',
      make: () => backupOf(whole().filter((_, n) => n !== 40)),
      says: /ends before its end/,
    },
    {
      what: 'a figure changed',
      make: () => {
        const path = join(folder, 'changed.gz');
        const lines = linesOf(file).map((line, n) =>
          n === 300 ? line.replace(/"at":"2026/, '"at":"2025') : line,
        );
        writeFileSync(path, gzipSync(lines.join('\n')));
        return path;
      },
      says: /do not give the digest in its last line/,
    },
    {
      what: 'a figure changed, digest made to fit',
      make: () => backupOf(changed(/("seq":300,.*?"at":")2026/, '$12025')),
      says: /entry 300 of the backup does not fit: its hash is not that of its content/,
    },
    {
      what: 'a signed text changed, digest made to fit',
      make: () => backupOf(changed(/("table":"signed_text".*)Lantern/, '$1Lampion')),
      says: /stored text is not the one that this signature covers/,
    },
    {
      what: 'a line that is no row',
      make: () => backupOf([...whole().slice(0, 9), '{"table":"pg_authid","row":{}}']),
      says: /Line 10 of the file/,
    },
    {
      what: 'a newer format',
      make: () => backupOf(changed(/holdproof-backup\/1/, 'holdproof-backup/2')),
      says: /newer program wrote this backup \(format 2/,
    },
    {
      what: 'newer tables',
      make: () => backupOf(changed(/"schema":\{"number":\d+/, '"schema":{"number":999')),
      says: /tables are version 999/,
    },
    {
      what: 'an export',
      make: () => backupOf(['{"format":"holdproof-export/1"}']),
      says: /an export of the ledger, not a backup/,
    },
    {
      what: 'a bomb: one line of zeros without end',
      make: () => {
        const path = join(folder, 'bomb.gz');
        writeFileSync(path, gzipSync(Buffer.alloc(200 * 1024 * 1024, 0x30)));
        return path;
      },
      says: /Line 1 of the file/,
    },
  ];

  let empty: FreshBook;
  beforeAll(async () => {
    empty = await freshBook();
  });
  afterAll(() => empty.close());

  test.each(cases)('$what', async ({ make, says }) => {
    const path = make();
    const { status, said } = await ran(runRestore, empty.env, path);
    expect(said.join('\n')).toMatch(says);
    expect(status).toBe(1);
    const [row] = await empty.db.sql`select (select count(*) from ledger) + (select count(*) from head)
      + (select count(*) from secret) + (select count(*) from device) as rows`;
    expect(Number(row?.rows)).toBe(0);
  });

  test('a book that is not empty', async () => {
    const { status, said } = await ran(runRestore, book.env, file);
    expect(status).toBe(1);
    expect(said.join(' ')).toMatch(/not empty: there is 1 site .* a restore never mixes two/);
  });
});
