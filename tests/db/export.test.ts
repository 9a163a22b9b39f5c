import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runExport } from '#bin/export.ts';
import { createSite } from '#db/ledger.ts';
import { headOf } from '#db/load.ts';
import { sha256 } from '#db/sha256.ts';
import { storeSignedText } from '#db/signed-texts.ts';
import { chainStart, entryHash } from '#shared/envelope.ts';
import { clock, hand, reading, site } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let book: FreshBook;
let here: string;
const folder = mkdtempSync(join(tmpdir(), 'holdproof-export-'));
const text = '{"day":"2026-10-16","note":"añadido\\n"}';

beforeAll(async () => {
  book = await freshBook();
  const made = await createSite(book.db, hand, [site(), reading(null, '158.0'), reading(null, '151')], clock);
  here = String(made.site);
  await storeSignedText(book.db, here, text);
});
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await book.close();
});

async function exported(...args: string[]): Promise<{ status: number; said: string[]; out: string[] }> {
  const said: string[] = [];
  const out: string[] = [];
  const io = { out: (line: string) => void out.push(line), err: (line: string) => void said.push(line) };
  const status = await runExport(args, { ...io, env: { ...book.env, LANG: 'C', LC_ALL: 'C' } });
  return { status, said, out };
}

test('the whole book is written as JSON Lines that can be checked without the database (demand:22 demand:50)', async () => {
  const file = join(folder, 'book.jsonl');
  const { status, said, out } = await exported(file);
  expect(status).toBe(0);
  expect(out).toEqual([]);
  expect(said.at(-1)).toBe(`3 entries and 1 signed text written to ${file}.`);
  const lines = readFileSync(file, 'utf8').trimEnd().split('\n');
  const [manifest, ...rest] = lines.map((line) => JSON.parse(line));
  const head = await headOf(book.db, here);
  expect(manifest).toMatchObject({
    format: 'holdproof-export/1',
    sites: [here],
    counts: { entries: 3, signed_texts: 1 },
    heads: [{ site: here, ...head }],
  });
  let prev = chainStart;
  for (const { entry } of rest.slice(0, 3)) {
    expect(entry.prev).toBe(prev);
    expect(entryHash(entry, entry.body, entry.prev, sha256)).toBe(entry.hash);
    prev = entry.hash;
  }
  expect(prev).toBe(head?.hash);
  expect(rest.slice(3)).toEqual([{ signed_text: { site: here, hash: sha256(text), text } }]);
});

test('no file named, or one that cannot be written, is said, and nothing half-written is left', async () => {
  expect(await exported()).toMatchObject({ status: 3, said: [expect.stringMatching(/^Which file\?/)] });
  const file = join(folder, 'not', 'there.jsonl');
  const { status, said } = await exported(file);
  expect(status).toBe(1);
  expect(said.at(-1)).toMatch(/could not be written: ENOENT/);
  expect(existsSync(join(folder, 'not'))).toBe(false);
  expect(readdirSync(folder).filter((name) => name.includes('unfinished'))).toEqual([]);
});
