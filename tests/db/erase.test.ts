import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type postgres from 'postgres';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { runErase } from '#bin/erase.ts';
import { runSheet } from '#bin/sheet.ts';
import type { Row } from '#bin/verify/walk.ts';
import { runVerify } from '#bin/verify.ts';
import { erasedDay } from '#db/erase/erased-day.ts';
import { append } from '#db/ledger.ts';
import { loadAll, loadEntries, loadKinds } from '#db/load.ts';
import { sha256 } from '#db/sha256.ts';
import { signDay } from '#db/sign.ts';
import { signedTextOf } from '#db/signed-texts.ts';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import { canonicalText } from '#shared/envelope.ts';
import { cook, hand, minutes } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';
import { longAgo, oldBatch, oldBook, signedText, today } from './old-book.ts';

let book: FreshBook;
let owner: postgres.Sql;
let here: string;

beforeAll(async () => {
  book = await freshBook();
  owner = book.owner();
});
afterAll(async () => {
  await owner.end();
  await book.close();
});
beforeEach(async () => {
  here = await oldBook(book);
});
afterEach(async () => {
  const tables = ['ledger', 'signed_text', 'head', 'batch_life'];
  await tamper(...tables.map((table) => `delete from ${table} where HERE`));
});

const triggers = { ledger: ['append_only', 'erase_only'], signed_text: ['append_only', 'erase_only'] };

/** Someone who owns the database edits it: triggers off, the edit, triggers on again. */
async function tamper(...edits: string[]): Promise<void> {
  for (const table of Object.keys(triggers)) await owner.unsafe(`alter table ${table} disable trigger all`);
  for (const edit of edits) await owner.unsafe(edit.replaceAll('HERE', `site = '${here}'`));
  for (const [table, names] of Object.entries(triggers)) {
    for (const name of names)
      await owner.unsafe(`alter table ${table} enable always trigger ${table}_${name}`);
  }
}

type Command = typeof runErase;
async function ran(command: Command, args: string[], env = book.env, now = today) {
  const said: string[] = [];
  const take = (line: string) => void said.push(line);
  const io = { out: take, err: take, env: { ...env, LANG: 'C', LC_ALL: 'C' } };
  return { status: await command(args, io, () => now), said };
}
const erased = (...args: string[]) => ran(runErase, args);
const verified = (...args: string[]) => ran((given, io) => runVerify(given, io), args);

const rows = () => owner<Row[]>`select * from ledger where site = ${here} order by seq`;
const bodyOf = async (seq: number) => (await rows())[seq - 1]?.body ?? '';

describe('at the end of retention (demand:57)', () => {
  test('without --yes it only says what would go, with the digest that is worked out by hand', async () => {
    const before = await rows();
    const digest = createHash('sha256');
    for (const { seq, hash, body } of before.slice(2, 9)) digest.update(`${seq} ${hash} ${sha256(body)}\n`);
    const { status, said } = await erased('--before', '2024-01-01');
    expect(status).toBe(0);
    expect(said[0]).toMatch(
      /Copper Hollow: 7 entries of 1 day, 2023-03-10 to 2023-03-10, 2 kB of text, with 1 signed sheet\./,
    );
    expect(said[1]).toBe(`Digest of what goes: ${digest.digest('hex')}`);
    expect(said.join(' ')).toMatch(/Nothing was changed\. To erase it for good, the same with --yes/);
    expect(await rows()).toEqual(before);
  });

  test('with --yes an entry says what went, each body is its own SHA-256, and the rest is as it was', async () => {
    const before = await rows();
    const { status, said } = await erased('--before', '2024-01-01', '--yes');
    expect(said.join('\n')).toMatch(/Entry 16 says so in the book, by Orla Quint/);
    expect(status).toBe(0);
    const after = await rows();
    expect(after.slice(2, 9)).toEqual(
      before.slice(2, 9).map((row) => ({
        ...row,
        body: `sha256:${sha256(row.body)}`,
        subject: null,
        target: null,
        day: null,
      })),
    );
    expect([...after.slice(0, 2), ...after.slice(9, 15)]).toEqual([
      ...before.slice(0, 2),
      ...before.slice(9),
    ]);
    const [entry] = await loadKinds(book.db, here, ['erasure']);
    expect(entry).toMatchObject({
      seq: 16,
      known: 'command_line',
      body: {
        before: '2024-01-01',
        kept_years: 2,
        from: '2023-03-10',
        to: '2023-03-10',
        ranges: [[3, 9]],
        count: 7,
        sheets: [{ day: '2023-03-10', hash: sha256(signedText) }],
      },
    });
    expect(await signedTextOf(book.db, here, sha256(signedText))).toBeNull();
    const lives = await owner`select batch from batch_life where site = ${here} and batch = ${oldBatch}`;
    expect(lives).toEqual([]);
  });

  test('the chain stays whole, an end printed before still matches, and verify says what went', async () => {
    const [, , , , , , , , ninth] = await rows();
    await erased('--before', '2024-01-01', '--yes');
    const { status, said } = await verified('--head', `9:${ninth?.hash.slice(0, 12)}`);
    expect(status).toBe(0);
    expect(said[0]).toMatch(/16 entries, each fits the one before it/);
    expect(said[1]).toMatch(
      /Erased at the end of retention on 2026-11-26T15:00:00Z by Orla Quint \(entry 16\): the text of 7 entries between numbers 3 and 9, of the days 2023-03-10 to 2023-03-10, with 1 signed text\. Digest of what went: [0-9a-f]{64}/,
    );
    expect(said[2]).toMatch(/That it had to go is only what the entry says/);
    expect(said[3]).toMatch(/noted earlier \(entry 9\) is in this chain/);
  });

  test('asked again there is nothing left, and says so', async () => {
    await erased('--before', '2024-01-01', '--yes');
    const { status, said } = await erased('--before', '2024-01-01', '--yes');
    expect(status).toBe(1);
    expect(said[0]).toMatch(/Nothing from before 2024-01-01 is left to erase/);
  });

  test('what loads entries goes on without them, and the days that stay say the same', async () => {
    const sheet = async () => canonicalText(canonicalDay(await loadAll(book.db, here), '2026-10-16'));
    const before = await sheet();
    await erased('--before', '2024-01-01', '--yes');
    expect((await loadAll(book.db, here)).map(({ seq }) => seq)).toEqual([1, 2, 10, 11, 12, 13, 14, 15, 16]);
    const window = { fromMs: longAgo - minutes(600), toMs: longAgo + minutes(600) };
    expect((await loadEntries(book.db, here, window)).map(({ seq }) => seq)).toEqual([1, 2]);
    expect(await sheet()).toBe(before);
  });

  test('a phone that sends an erased entry again is told that it is in the book', async () => {
    const drafts = (await loadAll(book.db, here)).slice(4, 5);
    const sent = drafts.map(({ id, kind, version, at, entered_at, by, body }) => ({
      ...{ id, kind, version, at, entered_at, by, body },
    })) as Parameters<typeof append>[2];
    await erased('--before', '2024-01-01', '--yes');
    const writer = { ...hand, site: here };
    expect(await append(book.db, writer, sent, () => today)).toMatchObject([{ status: 'already', seq: 5 }]);
    const [first] = sent;
    if (first === undefined) throw new Error('nothing to send');
    const other = [{ ...first, body: { ...first.body, typed: '163.0', value: 163 } }] as typeof drafts;
    expect(await append(book.db, writer, other, () => today)).toMatchObject([{ status: 'refused' }]);
  });
});

const edits: { what: string; edits: string[]; says: RegExp }[] = [
  {
    what: 'the time of an erased entry',
    edits: [`update ledger set at = replace(at, ':00Z', ':01Z') where HERE and seq = 5`],
    says: /entry 5 does not fit: its hash is not that of its content/,
  },
  {
    what: 'the digest of an erased body',
    edits: [`update ledger set body = 'sha256:${'0'.repeat(64)}' where HERE and seq = 6`],
    says: /entry 6 does not fit: its hash is not that of its content/,
  },
  {
    what: 'another body in the place of an erased one',
    edits: [`update ledger set body = '{"typed":"163.0"}' where HERE and seq = 6`],
    says: /entry 6 does not fit: its hash is not that of its content/,
  },
  {
    what: 'an erased entry that was removed',
    edits: ['delete from ledger where HERE and seq = 7'],
    says: /entry 8 does not fit: expected number 7, found 8/,
  },
  {
    what: 'one more body taken away in the same manner',
    edits: [
      `update ledger set body = 'sha256:' || encode(sha256(convert_to(body, 'UTF8')), 'hex'),
        subject = null where HERE and seq = 12`,
    ],
    says: /entry 12 does not fit: its text was replaced by its digest, and no later entry says that it was erased/,
  },
  {
    what: 'an erased entry that is found by its batch',
    edits: [`update ledger set subject = '${oldBatch}' where HERE and seq = 5`],
    says: /entry 5 does not fit: the column subject says/,
  },
  {
    what: 'a signed text that is back',
    edits: [
      `insert into signed_text (site, hash, text) select site, '${sha256(signedText)}', '${signedText}'
        from head where HERE`,
    ],
    says: /entry 16 does not fit: it says that the signed text [0-9a-f]{64} was erased, and it is stored/,
  },
];

describe('verify still finds, in and about what was erased (demand:24 demand:57)', () => {
  test.each(edits)('$what', async ({ edits: made, says }) => {
    await erased('--before', '2024-01-01', '--yes');
    await tamper(...made);
    const { status, said } = await verified();
    expect(said[0]).toMatch(says);
    expect(status).toBe(1);
  });

  test('a text that was put back, though it is the right one', async () => {
    const body = await bodyOf(5);
    await erased('--before', '2024-01-01', '--yes');
    await tamper(`update ledger set body = '${body}', subject = '${oldBatch}' where HERE and seq = 5`);
    const { status, said } = await verified();
    expect(said[0]).toMatch(/entry 5 does not fit: entry 16 says that its text was erased, and it is there/);
    expect(status).toBe(1);
  });
});

describe('the sheet of a day that was erased (demand:57)', () => {
  test('says so with the digest and the hash of what was signed, and is not printed', async () => {
    expect(await erasedDay(book.db, here, '2023-03-10')).toBeNull();
    await erased('--before', '2024-01-01', '--yes');
    const day = await erasedDay(book.db, here, '2023-03-10');
    const [entry] = await loadKinds(book.db, here, ['erasure']);
    expect(day).toMatchObject({
      by: 'Orla Quint',
      seq: 16,
      count: 6, // the signature is the seventh, and was written on the day after
      left: 0,
      digest: entry?.body.digest,
      sheets: [sha256(signedText)],
    });
    for (const other of ['2023-03-09', '2023-03-11', '2026-10-16']) {
      expect(await erasedDay(book.db, here, other)).toBeNull();
    }
    const out = join(tmpdir(), `${here}.json`);
    const asked = ['--day', '2023-03-10', '--format', 'json', '--out', out];
    const { status, said } = await ran((given, io) => runSheet(given, io), asked);
    expect(status).toBe(1);
    expect(said[0]).toMatch(
      /The day 2023-03-10 was erased on 2026-11-26 .* digest [0-9a-f]{64}: there is no/,
    );
    expect(existsSync(out)).toBe(false);
  });

  test('cannot be signed anew as if nothing had been', async () => {
    await erased('--before', '2024-01-01', '--yes');
    const toSign = { day: '2023-03-10', by: cook, read: { hash: '0'.repeat(64), seq: 16 } };
    const meaning = { meaning: 'I have reviewed this day', openItems: [] };
    const signed = await signDay(book.db, { ...hand, site: here }, { ...toSign, ...meaning }, () => today);
    expect(signed).toMatchObject({ status: 'refused', problems: [{ problem: 'no_such_sheet' }] });
  });
});
