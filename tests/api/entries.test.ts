import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { POST } from '#app/api/entries/route.ts';
import { appRole } from '#db/embedded/roles.ts';
import { createSite } from '#db/ledger.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { Receipt } from '#shared/receipt.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { type Answer, Browser, problemsIn } from './browser.ts';
import { airReading, cabinet, draft, newKitchen, person, routesOnFreshBook, site } from './kitchen.ts';

let book: FreshBook;
let kitchen: Awaited<ReturnType<typeof newKitchen>>;
let ownSite: string;

beforeAll(async () => {
  book = await routesOnFreshBook();
  kitchen = await newKitchen();
  ownSite = (await listSites(book.db))[0]?.site ?? '';
});
afterAll(() => book.close());

const receiptsOf = ({ json }: Answer): Receipt[] => json.receipts as Receipt[];
const entries = (of = ownSite) => loadAll(book.db, of);

const beans: Omit<Body<'food'>, 'food'> = {
  name: 'Pit beans',
  name_es: null,
  class: 'plant',
  counted: 'not_counted',
  sealed_commercial: false,
  note: null,
  active: true,
};
const withBody = (more: object) => {
  const one = airReading(kitchen.owner.person);
  return { ...one, body: { ...one.body, ...more } };
};
const lookAt = (batch: string, by: string) => {
  const one = airReading(by);
  return { ...one, body: { ...one.body, batch, spot: 'coldest' } };
};

describe('POST /api/entries', () => {
  test('gives the receipt also where the device’s clock cannot be noted beside it', async () => {
    const owner = book.owner();
    const { tablet } = kitchen;
    const told = vi.spyOn(console, 'error').mockImplementation(() => {});
    await owner`revoke insert on device_clock from ${owner(appRole)}`;
    const text = JSON.stringify([airReading(kitchen.owner.person)]);
    const answer = await tablet.send(POST, text, {}, `/entries?sent=${Date.now()}`);
    await owner`grant insert on device_clock to ${owner(appRole)}`;
    await owner.end();
    expect(answer.status).toBe(200);
    expect(receiptsOf(answer)[0]?.seq).toBeGreaterThan(0);
    expect(told).toHaveBeenCalledOnce();
    told.mockRestore();
  });

  test('takes an entry once: the same again gets the same receipt and no second row', async () => {
    const { tablet, owner } = kitchen;
    const one = airReading(owner.person);
    const first = receiptsOf(await tablet.post(POST, [one]));
    const count = (await entries()).length;
    const second = receiptsOf(await tablet.post(POST, [{ ...one }]));
    expect(first[0]?.seq).toBeGreaterThan(0);
    expect(second).toEqual(first);
    expect((await entries()).length).toBe(count);
  });

  test('answers entry by entry: a refused one stops none of the others', async () => {
    const { tablet, owner } = kitchen;
    const [before, after] = [airReading(owner.person, 151), airReading(owner.person, 152)];
    const wrong = { ...airReading(owner.person), kind: 'weather' };
    const answer = await tablet.post(POST, [before, wrong, after]);
    expect(answer.status).toBe(200);
    const receipts = receiptsOf(answer);
    expect(receipts.map(({ id }) => id)).toEqual([before.id, wrong.id, after.id]);
    expect(receipts[2]?.seq).toBe((receipts[0]?.seq ?? 0) + 1);
    expect(receipts[1]).toMatchObject({ seq: null, problem: { field: 'kind', problem: 'unknown_kind' } });
    expect(receipts[1]?.problem?.words.problem).toContain('weather');
  });

  test('asks about a look that is the same as one just before, and takes it when it is meant', async () => {
    const { tablet, owner } = kitchen;
    await tablet.post(POST, [airReading(owner.person, 161.5)]);
    const twin = airReading(owner.person, 161.5);
    const [asked] = receiptsOf(await tablet.post(POST, [twin]));
    expect(asked?.problem).toMatchObject({ field: 'body.value', problem: 'duplicate' });
    const [taken] = receiptsOf(await tablet.post(POST, [twin], {}, `?sure=${twin.id}`));
    expect(taken?.seq).toBeGreaterThan(0);
  });

  test('what was written while its writer was not signed in waits for that person or a lead, and the lead is noted', async () => {
    const { tablet, owner } = kitchen;
    const cook = person({ name: 'Piet Amaro', initials: 'PA', role: 'crew' });
    await tablet.post(POST, [draft('person', cook, owner.person)]);
    const look = airReading(cook.person, 163.5);
    const [waits] = receiptsOf(await tablet.post(POST, [look], {}, `?waited=${look.id}`));
    expect(waits).toMatchObject({ seq: null, problem: { problem: 'lead_accepts' } });
    const accepted = `?waited=${look.id}&accepted=${look.id}`;
    const [taken] = receiptsOf(await tablet.post(POST, [look], {}, accepted));
    expect(taken).toMatchObject({ known: 'tap', problem: null });
    const [again] = receiptsOf(await tablet.post(POST, [look], {}, accepted));
    expect(again?.seq).toBe(taken?.seq);
    const own = airReading(owner.person, 163.9);
    const [signed] = receiptsOf(await tablet.post(POST, [own], {}, `?waited=${own.id}`));
    expect(signed).toMatchObject({ known: 'secret', problem: null });
    expect(signed?.seq).toBe((taken?.seq ?? 0) + 2); // the note of who accepted lies between
  });

  test('knows what the same request wrote before: a new batch, its step, its first look', async () => {
    const { tablet, owner } = kitchen;
    const [batch, food] = [v7(), v7()];
    const by = owner.person;
    const sent = [
      draft('food', { ...beans, food }, by),
      draft('batch', { batch, name: 'BN-1', food, pieces: null, made: 'new', source: [], note: null }, by),
      draft('step', { batch, pieces: null, step: 'hot_hold', equipment: cabinet, details: {} }, by),
      lookAt(batch, by),
    ];
    const receipts = receiptsOf(await tablet.post(POST, sent));
    expect(receipts.map(({ problem }) => problem)).toEqual([null, null, null, null]);
    const [later] = receiptsOf(await tablet.post(POST, [lookAt(batch, by)]));
    expect(later?.problem).toBeNull();
    const gone = draft(
      'step',
      { batch, pieces: null, step: 'gone', equipment: null, details: { reason: 'sold' } },
      by,
      Date.now() - 1_000,
    );
    await tablet.post(POST, [gone]);
    const [refused] = receiptsOf(await tablet.post(POST, [lookAt(batch, by)]));
    expect(refused?.problem?.problem).toBe('batch_gone');
  });

  test.each([
    [
      'a look of the future',
      () => airReading(kitchen.owner.person, 150, Date.now() + 6 * 60_000),
      'reading_future',
    ],
    ['an unknown cabinet', () => withBody({ equipment: v7() }), 'unknown_equipment'],
    ['an unknown batch', () => withBody({ batch: v7(), spot: 'core' }), 'unknown_batch'],
    ['food of no batch', () => withBody({ spot: 'core' }), 'look_at_no_food'],
  ])('%s has an answer of its own', async (_, made, problem) => {
    const [receipt] = receiptsOf(await kitchen.tablet.post(POST, [made()]));
    expect(receipt?.problem?.problem).toBe(problem);
    expect(receipt?.problem?.words.problem).not.toContain(problem);
  });

  test('names the field of a fault, in words', async () => {
    const { tablet, owner } = kitchen;
    const good = airReading(owner.person);
    const wrong = { ...good, body: { ...good.body, value: 'hot' } };
    const [receipt] = receiptsOf(await tablet.post(POST, [wrong]));
    expect(receipt?.problem).toMatchObject({
      field: 'body.value',
      problem: 'not_a_number',
      words: { problem: '“hot” is no number.' },
    });
  });

  test('speaks the language of the device', async () => {
    const { owner, tablet } = kitchen;
    const good = airReading(owner.person);
    tablet.jar.set('language', 'es');
    const [receipt] = receiptsOf(
      await tablet.post(POST, [{ ...good, body: { ...good.body, value: 'hot' } }]),
    );
    tablet.jar.set('language', 'en');
    expect(receipt?.problem?.words.problem).toBe('«hot» no es un número.');
  });

  test('a body that names a site, a device or how it is known is refused as it stands (demand:13)', async () => {
    const { tablet, owner } = kitchen;
    for (const extra of [
      { site: v7() },
      { device: v7() },
      { known: 'secret' },
      { seq: 1 },
      { received_at: '2026-10-16T09:00:00Z' },
    ]) {
      const [receipt] = receiptsOf(await tablet.post(POST, [{ ...airReading(owner.person), ...extra }]));
      expect(receipt?.problem?.problem).toBe('unknown_field');
    }
  });

  test('a session writes in its own site only, whatever else the book holds', async () => {
    const stranger = person({ name: 'Ansel Reiff' });
    const other = await createSite(
      book.db,
      { device: v7(), knownOf: () => 'command_line' },
      [
        draft('site', { ...site, name: 'Other Yard' }, stranger.person),
        draft('person', stranger, stranger.person),
      ],
      Date.now,
    );
    const count = (await entries(other.site ?? '')).length;
    const { tablet, owner } = kitchen;
    const [own] = receiptsOf(await tablet.post(POST, [airReading(owner.person)]));
    const [foreign] = receiptsOf(await tablet.post(POST, [airReading(stranger.person)]));
    expect(own?.seq).not.toBeNull();
    expect(foreign?.problem?.problem).toBe('not_in_people');
    expect((await entries(other.site ?? '')).length).toBe(count);
  });

  test.each(['signature', 'secret_set', 'secret_reset', 'device_enrolled', 'retention', 'erasure'] as const)(
    '%s has a door of its own and is refused here',
    async (kind) => {
      const { tablet, owner } = kitchen;
      const bodies = {
        signature: {
          day: '2026-10-16',
          revision: 1,
          from: '2026-10-16T09:00:00Z',
          to: '2026-10-17T09:00:00Z',
          name: owner.name,
          role: 'owner',
          meaning: 'I have reviewed this day',
          open_items: [],
          hash: 'a'.repeat(64),
          head: null,
        },
        secret_set: { person: owner.person },
        secret_reset: { person: owner.person },
        device_enrolled: { device: v7(), name: 'a phone' },
        retention: { years: 5, because: 'house rule' },
        erasure: {
          before: '2024-01-01',
          kept_years: 2,
          from: '2023-03-10',
          to: '2023-03-10',
          ranges: [[1, 2]],
          count: 2,
          bytes: 100,
          digest: 'a'.repeat(64),
          sheets: [],
        },
      } as const;
      const sent = draft(kind, bodies[kind] as never, owner.person);
      const [receipt] = receiptsOf(await tablet.post(POST, [sent]));
      expect(receipt?.problem?.problem).toBe('own_door');
    },
  );

  test.each([
    ['no JSON', '[{', 'not_json'],
    ['nothing', '', 'not_json'],
    ['no list', '{}', 'not_a_list'],
    ['more than a night', JSON.stringify(Array.from({ length: 501 }, () => ({}))), 'too_many'],
    ['more than a megabyte', `["${'x'.repeat(1024 * 1024)}"]`, 'body_too_large'],
  ])('%s is refused as a whole', async (_, text, problem) => {
    const answer = await kitchen.tablet.send(POST, text);
    expect(answer.status).toBe(422);
    expect(problemsIn(answer)).toEqual([problem]);
  });

  test('a device that the kitchen does not know writes nothing (demand:28)', async () => {
    const answer = await new Browser().post(POST, [airReading(kitchen.owner.person)]);
    expect(answer.status).toBe(401);
    expect(problemsIn(answer)).toEqual(['device_unknown']);
  });

  test('a cookie that was changed by one sign is no session (demand:26)', async () => {
    const thief = new Browser();
    const cookie = kitchen.tablet.jar.get('device') ?? '';
    const middle = Math.floor(cookie.length / 2);
    const other = cookie[middle] === 'a' ? 'b' : 'a';
    thief.jar.set('device', cookie.slice(0, middle) + other + cookie.slice(middle + 1));
    expect(problemsIn(await thief.post(POST, [airReading(kitchen.owner.person)]))).toEqual([
      'device_unknown',
    ]);
  });

  test.each([
    ['another origin', { origin: 'http://elsewhere.example' }],
    ['a sandboxed frame', { origin: 'null' }],
    ['a cross-site form', { 'sec-fetch-site': 'cross-site' }],
    ['a neighbour on the same domain', { 'sec-fetch-site': 'same-site' }],
  ])('what %s sends is refused, with the cookies of a good session', async (_, headers) => {
    const answer = await kitchen.tablet.post(POST, [airReading(kitchen.owner.person)], headers);
    expect(answer.status).toBe(403);
    expect(problemsIn(answer)).toEqual(['other_origin']);
  });
});
