import { gzipSync } from 'node:zlib';
import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { POST } from '#app/api/entries/route.ts';
import { createSite } from '#db/ledger.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { Draft } from '#shared/entries/entry.ts';
import type { Receipt, SaidProblem } from '#shared/receipt.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { type Answer, Browser } from './browser.ts';
import { airReading, cabinet, draft, newKitchen, person, routesOnFreshBook, site } from './kitchen.ts';

let book: FreshBook;
let kitchen: Awaited<ReturnType<typeof newKitchen>>;
let here: string;

beforeAll(async () => {
  book = await routesOnFreshBook();
  kitchen = await newKitchen();
  here = (await listSites(book.db))[0]?.site ?? '';
});
afterAll(() => book.close());

const receiptsOf = ({ json }: Answer): Receipt[] => json.receipts as Receipt[];
const count = async (): Promise<number> => (await loadAll(book.db, here)).length;

/** A request with bytes of its own, by the tablet's cookies. */
async function sent(bytes: BodyInit, headers: Record<string, string> = {}): Promise<Answer> {
  const cookie = [...kitchen.tablet.jar].map(([name, value]) => `${name}=${value}`).join('; ');
  const asked = { host: 'kitchen.example:3000', 'content-type': 'application/json', cookie, ...headers };
  const request = new Request('http://kitchen.example:3000/api/entries', {
    method: 'POST',
    body: bytes,
    headers: asked,
  });
  const response = await POST(request);
  return { status: response.status, json: (await response.json()) as Record<string, unknown> };
}

/** A list of one look, as JSON in other signs than UTF-8. */
const latin = (): Uint8Array<ArrayBuffer> =>
  new Uint8Array(Buffer.from(JSON.stringify([{ note: 'añadido' }]), 'latin1'));
const utf16 = (): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(JSON.stringify([{}]), 'utf16le'));
/** A gigabyte of spaces would be a megabyte packed; a hundredth of it is enough to see whether it is unpacked. */
const bomb = (): Uint8Array<ArrayBuffer> => new Uint8Array(gzipSync(Buffer.alloc(10_000_000, 0x20)));

const whole: [what: string, bytes: () => BodyInit, headers: Record<string, string>, problem: string][] = [
  ['a body of two megabytes', () => `["${'x'.repeat(2 * 1024 * 1024)}"]`, {}, 'body_too_large'],
  ['a length that is said and not sent', () => '[]', { 'content-length': '99999999' }, 'body_too_large'],
  ['a bomb in gzip', bomb, { 'content-encoding': 'gzip' }, 'packed'],
  ['a bomb that does not say what it is', bomb, {}, 'not_utf8'],
  ['another packing', () => '[]', { 'content-encoding': 'br' }, 'packed'],
  ['words in Latin-1', latin, {}, 'not_utf8'],
  ['words in Latin-1 that say so', latin, { 'content-type': 'application/json; charset=latin1' }, 'not_utf8'],
  ['words in UTF-16', utf16, { 'content-type': 'application/json; charset=utf-16' }, 'not_utf8'],
  ['a form', () => 'kind=reading', { 'content-type': 'application/x-www-form-urlencoded' }, 'not_json_type'],
  ['plain words', () => '[]', { 'content-type': 'text/plain' }, 'not_json_type'],
  ['brackets without end', () => '['.repeat(500_000), {}, 'not_json'],
  ['half of a list', () => '[{"id":', {}, 'not_json'],
];

describe('what cannot be read as a list is refused as a whole, in words', () => {
  test.each(whole)('%s', async (_, bytes, headers, problem) => {
    const before = await count();
    const words: string[] = [];
    for (const language of ['en', 'es']) {
      kitchen.tablet.jar.set('language', language);
      const { status, json } = await sent(bytes(), headers);
      expect(status).toBe(422);
      const [said, another] = json.problems as SaidProblem[];
      expect(another).toBeUndefined();
      expect(said).toMatchObject({ problem, field: '' });
      expect(said?.words.problem).not.toMatch(/^problem\.|[{}]/);
      expect(said?.words.remedy).not.toMatch(/^remedy\.|[{}]/);
      words.push(said?.words.problem ?? '');
    }
    kitchen.tablet.jar.delete('language');
    expect(words[0]).not.toBe(words[1]);
    expect(await count()).toBe(before);
  });

  test('a body without end is read no further than a megabyte', async () => {
    let given = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        given += 64 * 1024;
        controller.enqueue(new Uint8Array(64 * 1024).fill(0x20));
      },
    });
    const answer = await POST(
      new Request('http://kitchen.example:3000/api/entries', {
        method: 'POST',
        body: endless,
        duplex: 'half',
        headers: {
          host: 'kitchen.example:3000',
          'content-type': 'application/json',
          cookie: `device=${kitchen.tablet.jar.get('device')}`,
        },
      } as RequestInit),
    );
    expect(answer.status).toBe(422);
    expect(given).toBeLessThan(1.5 * 1024 * 1024);
  });
});

const deep = (levels: number): object => {
  let value: object = {};
  for (let n = 0; n < levels; n += 1) value = { a: value };
  return value;
};
const wide = (fields: number): object =>
  Object.fromEntries(Array.from({ length: fields }, (_, n) => [`field_${n}`, n]));
const with_ = (more: object): Draft => {
  const one = airReading(kitchen.owner.person);
  return { ...one, body: { ...one.body, ...more } } as Draft;
};

describe('one bad entry stops none of the others, and each is listed in its place', () => {
  test('words, lists, nothing, parts within parts, a thousand fields, odd ids, among good looks', async () => {
    const by = kitchen.owner.person;
    const [first, last] = [airReading(by, 155.1), airReading(by, 155.2)];
    const bad: [entry: unknown, problem: string, field: string][] = [
      ['a word', 'wrong_shape', ''],
      [null, 'wrong_shape', ''],
      [[airReading(by)], 'wrong_shape', ''],
      [42, 'wrong_shape', ''],
      [with_({ details: 'DEEP' }), 'too_deep', ''],
      [with_({ details: deep(9) }), 'too_deep', ''],
      [{ ...airReading(by), ...wide(1000) }, 'too_many_fields', ''],
      [with_(wide(50)), 'unknown_field', 'body'],
      [{}, 'unknown_kind', 'kind'],
      [{ ...airReading(by), kind: { toString: 'reading' } }, 'unknown_kind', 'kind'],
      [{ ...airReading(by), kind: '__proto__' }, 'unknown_kind', 'kind'],
      [{ ...airReading(by), id: { toString: 'id' } }, 'wrong_shape', 'id'],
      [{ ...airReading(by), at: { toString: 'at' } }, 'wrong_shape', 'at'],
      [{ ...airReading(by), id: 7 }, 'wrong_shape', 'id'],
      [{ ...airReading(by), id: 'x'.repeat(100_000) }, 'not_an_id', 'id'],
      [{ ...airReading(by), at: 'yesterday' }, 'not_an_instant', 'at'],
      [{ ...airReading(by), by: null }, 'missing', 'by'],
      [{ ...airReading(by), body: 'warm' }, 'wrong_shape', 'body'],
      [with_({ value: '1e400' }), 'not_a_number', 'body.value'],
      [with_({ typed: '\ud800' }), 'unreadable_sign', 'body'],
    ];
    const before = await count();
    // Deeper than JSON.stringify itself can go: put in as text.
    const text = JSON.stringify([first, ...bad.map(([entry]) => entry), last]);
    const answer = await kitchen.tablet.send(
      POST,
      text.replace('"DEEP"', `${'{"a":'.repeat(20_000)}1${'}'.repeat(20_000)}`),
    );
    expect(answer.status).toBe(200);
    const receipts = receiptsOf(answer);
    expect(receipts).toHaveLength(bad.length + 2);
    const refused = receipts.slice(1, -1);
    expect(refused.map(({ problem }) => [problem?.problem, problem?.field])).toEqual(
      bad.map(([, problem, field]) => [problem, field]),
    );
    for (const { seq, problem } of refused) {
      expect(seq).toBeNull();
      expect(problem?.words.problem.length).toBeGreaterThan(10);
      expect(problem?.words.problem.length).toBeLessThan(2000);
      expect(problem?.words.remedy.length).toBeGreaterThan(5);
    }
    expect(receipts[0]).toMatchObject({ id: first.id, problem: null });
    expect(receipts.at(-1)).toMatchObject({ id: last.id, problem: null, seq: (receipts[0]?.seq ?? 0) + 1 });
    expect(await count()).toBe(before + 2);
  });

  test('500 entries that are all wrong are each answered', async () => {
    const answer = await kitchen.tablet.post(
      POST,
      Array.from({ length: 500 }, (_, n) => n),
    );
    expect(receiptsOf(answer).map(({ problem }) => problem?.problem)).toEqual(Array(500).fill('wrong_shape'));
  });
});

describe('ids of another site', () => {
  test('name nothing here: each is refused by its field, nothing of either site changes', async () => {
    const stranger = person({ name: 'Ansel Reiff' });
    const [theirCabinet, theirProbe, theirFood, theirBatch] = [v7(), v7(), v7(), v7()];
    const by = stranger.person;
    const theirLook = airReading(by, 141);
    const theirs: Draft[] = [
      draft('site', { ...site, name: 'Other Yard' }, by),
      draft('person', stranger, by),
      draft(
        'equipment',
        {
          equipment: theirCabinet,
          name: 'South',
          kind: 'heated_cabinet',
          set: null,
          order: 0,
          note: null,
          active: true,
        },
        by,
      ),
      draft(
        'batch',
        { batch: theirBatch, name: 'BN', food: theirFood, pieces: null, made: 'new', source: [], note: null },
        by,
      ),
      { ...theirLook, body: { ...theirLook.body, equipment: theirCabinet } } as Draft,
    ];
    const made = await createSite(book.db, { device: v7(), knownOf: () => 'command_line' }, theirs, Date.now);
    const there = made.site ?? '';
    const before = [await count(), (await loadAll(book.db, there)).length];
    const mine = kitchen.owner.person;
    const sentHere: [draft: Draft, problem: string, field: string][] = [
      [with_({ equipment: theirCabinet }), 'unknown_equipment', 'body.equipment'],
      [with_({ probe: theirProbe }), 'unknown_probe', 'body.probe'],
      [with_({ batch: theirBatch, spot: 'core' }), 'unknown_batch', 'body.batch'],
      [airReading(by), 'not_in_people', 'by'],
      [
        draft(
          'batch',
          { batch: v7(), name: 'X', food: theirFood, pieces: null, made: 'new', source: [], note: null },
          mine,
        ),
        'unknown_food',
        'body.food',
      ],
      [
        draft(
          'step',
          { batch: theirBatch, pieces: null, step: 'gone', equipment: cabinet, details: {} },
          mine,
        ),
        'unknown_batch',
        'body.batch',
      ],
      [
        draft(
          'amendment',
          { target: theirLook.id, field: 'struck', from: '', to: 'yes', reason: 'theirs' },
          mine,
        ),
        'unknown_entry',
        'body.target',
      ],
    ];
    const receipts = receiptsOf(
      await kitchen.tablet.post(
        POST,
        sentHere.map(([entry]) => entry),
      ),
    );
    expect(receipts.map(({ problem }) => [problem?.problem, problem?.field])).toEqual(
      sentHere.map(([, problem, field]) => [problem, field]),
    );
    // An id is one entry a site: theirs is taken here as an entry of its own, and theirs stays as it was.
    const [own] = receiptsOf(
      await kitchen.tablet.post(POST, [{ ...airReading(mine, 143), id: theirLook.id }]),
    );
    expect(own?.seq).toBeGreaterThan(0);
    const after = await loadAll(book.db, there);
    expect([await count(), after.length]).toEqual([(before[0] ?? 0) + 1, before[1]]);
    expect(after.find(({ id }) => id === theirLook.id)).toMatchObject({ by, body: { value: 141 } });
  });

  test('in the query (`sure`, `waited`, `accepted`) do nothing, however many', async () => {
    const ids = Array.from({ length: 300 }, () => v7()).join(',');
    const one = airReading(kitchen.owner.person, 144);
    const [receipt] = receiptsOf(
      await kitchen.tablet.post(POST, [one], {}, `?sure=${ids}&waited=${ids}&accepted=${ids}&site=${v7()}`),
    );
    expect(receipt?.seq).toBeGreaterThan(0);
  });

  test('a device of nowhere is told to be let in before anything of its body is read', async () => {
    const answer = await new Browser().send(POST, '[[[[');
    expect(answer.status).toBe(401);
  });
});
