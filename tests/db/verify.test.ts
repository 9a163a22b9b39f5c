import type postgres from 'postgres';
import { v7 } from 'uuid';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Row } from '#bin/verify/walk.ts';
import { runVerify } from '#bin/verify.ts';
import { append, createSite } from '#db/ledger.ts';
import { sha256 } from '#db/sha256.ts';
import { storeSignedText } from '#db/signed-texts.ts';
import { entryHash } from '#shared/envelope.ts';
import { batchOf, clock, draft, evening, hand, minutes, reading, site, step } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

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

/** A chain of ten: site, batch, two steps, five readings, a signature. */
beforeEach(async () => {
  const batch = v7();
  const made = await createSite(
    book.db,
    hand,
    [
      site(),
      batchOf(batch, 2),
      step(batch, 'hot_hold'),
      ...[1, 2, 3, 4, 5].map((n) => reading(batch, `15${n}.0`, evening + minutes(30 * n))),
      step(batch, 'gone', evening + minutes(300)),
    ],
    clock,
  );
  if (made.site === null) throw new Error('the site was refused');
  here = made.site;
  const hash = await storeSignedText(book.db, here, '{"day":"2026-10-16"}');
  const signature = draft('signature', {
    day: '2026-10-16',
    revision: 1,
    from: '2026-10-16T09:00:00Z',
    to: '2026-10-17T09:00:00Z',
    name: 'Orla Quint',
    role: 'manager',
    meaning: 'I have reviewed this day',
    open_items: [],
    hash,
    head: null,
  });
  await append(book.db, { ...hand, site: here }, [signature], clock);
});
afterEach(async () => {
  const tables = ['ledger', 'signed_text', 'head', 'batch_life'];
  await tamper(...tables.map((table) => `delete from ${table} where HERE`));
});

async function verified(...args: string[]): Promise<{ status: number; lines: string[] }> {
  const lines: string[] = [];
  const io = {
    out: (line: string) => void lines.push(line),
    err: () => {},
    env: { ...book.env, LANG: 'C', LC_ALL: 'C' },
  };
  return { status: await runVerify(args, io), lines };
}

/** Someone who owns the database edits it: triggers off, the edit, triggers on again. */
async function tamper(...edits: string[]): Promise<void> {
  for (const table of ['ledger', 'signed_text'])
    await owner.unsafe(`alter table ${table} disable trigger all`);
  for (const edit of edits) await owner.unsafe(edit.replaceAll('HERE', `site = '${here}'`));
  for (const table of ['ledger', 'signed_text']) {
    await owner.unsafe(`alter table ${table} enable always trigger ${table}_append_only`);
  }
}

const edits: { what: string; edits: string[]; says: RegExp }[] = [
  {
    what: 'one figure of a body',
    edits: [
      `update ledger set body = replace(body, '"typed":"153.0"', '"typed":"163.0"') where HERE and seq = 6`,
    ],
    says: /entry 6 does not fit: its hash is not that of its content/,
  },
  {
    what: 'one second of a time',
    edits: [`update ledger set at = replace(at, ':00Z', ':01Z') where HERE and seq = 5`],
    says: /entry 5 does not fit: its hash/,
  },
  {
    what: 'how the writer was known',
    edits: [`update ledger set known = 'tap' where HERE and seq = 7`],
    says: /entry 7 does not fit: its hash/,
  },
  {
    what: 'two entries that changed places',
    edits: [
      'update ledger set seq = 100 where HERE and seq = 4',
      'update ledger set seq = 4 where HERE and seq = 5',
      'update ledger set seq = 5 where HERE and seq = 100',
    ],
    says: /entry 4 does not fit: it does not name the hash of the entry before it/,
  },
  {
    what: 'one missing entry',
    edits: ['delete from ledger where HERE and seq = 5'],
    says: /entry 6 does not fit: expected number 5, found 6/,
  },
  {
    what: 'one missing entry whose followers were renumbered',
    edits: [
      'delete from ledger where HERE and seq = 5',
      'update ledger set seq = seq + 100 where HERE and seq > 5',
      'update ledger set seq = seq - 101 where HERE and seq > 100',
    ],
    says: /entry 5 does not fit: it does not name the hash/,
  },
  {
    what: 'the first entry removed',
    edits: ['delete from ledger where HERE and seq = 1'],
    says: /entry 2 does not fit: expected number 1, found 2/,
  },
  {
    what: 'the last entry removed',
    edits: ['delete from ledger where HERE and seq = 10'],
    says: /entry 10 does not fit: the end of the chain is noted as number 10/,
  },
  {
    what: 'an entry added behind the end',
    edits: [
      `insert into ledger select site, 11, gen_random_uuid(), kind, version, at, entered_at, received_at, by, known,
        device, body, hash, hash, at_ms, subject, target, day from ledger where HERE and seq = 10`,
    ],
    says: /entry 11 does not fit: its hash is not that of its content/,
  },
  {
    what: 'the note of the end moved back',
    edits: ['update head set seq = 9, hash = (select hash from ledger where HERE and seq = 9) where HERE'],
    says: /entry 10 does not fit: the end of the chain is noted as number 9/,
  },
  {
    what: 'who wrote an entry',
    edits: [`update ledger set "by" = device where HERE and seq = 6`],
    says: /entry 6 does not fit: its hash/,
  },
  {
    what: 'the end of the chain cut off',
    edits: ['delete from ledger where HERE and seq > 8'],
    says: /entry 9 does not fit: the end of the chain is noted as number 10/,
  },
  {
    what: 'the note of the end removed',
    edits: ['delete from head where HERE'],
    says: /no note of its chain's end/,
  },
  {
    what: 'an entry moved to another time in the index',
    edits: ['update ledger set at_ms = at_ms + 86400000 where HERE and seq = 6'],
    says: /entry 6 does not fit: the column at_ms says/,
  },
  {
    what: 'an entry hidden from its batch',
    edits: ['update ledger set subject = null where HERE and seq = 6'],
    says: /entry 6 does not fit: the column subject says –/,
  },
  {
    what: 'a signed text that was rewritten',
    edits: [`update signed_text set text = '{"day":"2026-10-15"}' where HERE`],
    says: /entry 10 does not fit: the stored text is not the one that this signature covers/,
  },
  {
    what: 'a signed text that was removed',
    edits: ['delete from signed_text where HERE'],
    says: /entry 10 does not fit: the text that this signature covers is not stored/,
  },
  {
    what: 'a batch noted as gone earlier than its entries say',
    edits: ['update batch_life set to_ms = from_ms where HERE'],
    says: /is noted as living from/,
  },
];

describe('the walk along the chain (demand:16 demand:24 demand:25)', () => {
  test('finds a whole chain whole, names its end and says what it cannot find', async () => {
    const { status, lines } = await verified();
    expect(status).toBe(0);
    expect(lines[0]).toMatch(/10 entries, each fits the one before it\. End of the chain: [0-9a-f]{64}/);
    expect(lines[1]).toMatch(
      /Without a note of an earlier end this walk cannot find a chain that was written anew/,
    );
  });

  test.each(edits)('finds $what', async ({ edits: made, says }) => {
    await tamper(...made);
    const { status, lines } = await verified();
    expect(lines[0]).toMatch(says);
    expect(status).toBe(1);
  });

  test('finds a body that says the same in another way, hash and all', async () => {
    const [row] = await owner<Row[]>`select * from ledger where site = ${here} and seq = 10`;
    if (row === undefined) throw new Error('no row');
    const body = ` ${row.body}`;
    const hash = entryHash({ ...row, seq: 10 }, body, row.prev, sha256);
    await tamper(
      `update ledger set body = ' ' || body, hash = '${hash}' where HERE and seq = 10`,
      `update head set hash = '${hash}' where HERE`,
    );
    const { status, lines } = await verified();
    expect(lines[0]).toMatch(/entry 10 does not fit: its body is not canonical JSON/);
    expect(status).toBe(1);
  });
});

/** Whoever owns the database and knows the layout: a figure changed, and every hash from there on written anew. */
async function writeAnewFrom(seq: number): Promise<void> {
  const rows = await owner<Row[]>`select * from ledger where site = ${here} and seq >= ${seq} order by seq`;
  const edits: string[] = [];
  let prev = rows[0]?.prev ?? '';
  for (const row of rows) {
    const body = row.body.replace('"typed":"153.0"', '"typed":"163.0"');
    const hash = entryHash({ ...row, seq: Number(row.seq) }, body, prev, sha256);
    const at = `where HERE and seq = ${row.seq}`;
    edits.push(`update ledger set body = '${body}', prev = '${prev}', hash = '${hash}' ${at}`);
    prev = hash;
  }
  await tamper(...edits, `update head set hash = '${prev}' where HERE`);
}

describe('an end of the chain that was noted earlier (demand:24 demand:25)', () => {
  const noted = async (seq: number): Promise<string> => {
    const [row] = await owner<Row[]>`select * from ledger where site = ${here} and seq = ${seq}`;
    return `${seq}:${row?.hash.slice(0, 12)}`; // as the foot of a sheet prints it
  };

  test('is found in a whole chain', async () => {
    const { status, lines } = await verified('--head', await noted(8));
    expect(status).toBe(0);
    expect(lines[1]).toMatch(/noted earlier \(entry 8\) is in this chain/);
    expect(lines[2]).toMatch(/What came after entry 8 could still have been written anew/);
  });

  test('shows a chain that was written anew from a point, which looks whole without it', async () => {
    const head = await noted(9);
    await writeAnewFrom(6);
    expect((await verified()).status).toBe(0);
    const { status, lines } = await verified('--head', head);
    expect(status).toBe(1);
    expect(lines[1]).toMatch(/Entry 9 or one before it was changed/);
  });

  test('from before the change cannot show it, and that is said', async () => {
    const head = await noted(5);
    await writeAnewFrom(6);
    const { status, lines } = await verified('--head', head);
    expect(status).toBe(0);
    expect(lines[2]).toMatch(/after entry 5 could still have been written anew/);
  });

  test('shows a tail cut off together with the note of it', async () => {
    const head = await noted(10);
    await tamper(
      'delete from ledger where HERE and seq > 9',
      'update head set seq = 9, hash = (select hash from ledger where HERE and seq = 9) where HERE',
    );
    expect((await verified()).status).toBe(0);
    const { status, lines } = await verified('--head', head);
    expect(status).toBe(1);
    expect(lines[1]).toMatch(/noted earlier is entry 10, and this chain ends with entry 9/);
  });

  test('that is none is refused in words', async () => {
    expect((await verified('--head', 'page 3')).status).toBe(3);
  });

  test('the first entry that does not fit is said with its time, and the last one that does', async () => {
    await tamper(`update ledger set known = 'tap' where HERE and seq = 7`);
    const { lines } = await verified();
    expect(lines.slice(1, 3)).toEqual([
      'It says that it came into the book at 2026-10-16T21:01:00Z.',
      'The last entry that fits is number 6, received 2026-10-16T21:01:00Z.',
    ]);
  });
});
