import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { append, createSite } from '#db/ledger.ts';
import { livesOf } from '#db/lives.ts';
import { latest, listSites, loadAll, loadEntries, loadKinds } from '#db/load.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { amendment, batchOf, clock, draft, evening, hand, minutes, reading, site, step } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let book: FreshBook;
beforeAll(async () => {
  book = await freshBook();
});
afterAll(() => book.close());

const hours = (n: number) => minutes(60 * n);
/** The night in question: 21:00 to 09:00. */
const night = { fromMs: evening, toMs: evening + hours(12) };

async function kitchen(drafts: Draft[]): Promise<string> {
  const { site: id, receipts } = await createSite(book.db, hand, [site(), ...drafts], clock);
  if (id === null) throw new Error(JSON.stringify(receipts));
  return id;
}
const add = (here: string, drafts: Draft[]) => append(book.db, { ...hand, site: here }, drafts, clock);
async function loaded(here: string, window = night): Promise<Set<string>> {
  return new Set((await loadEntries(book.db, here, window)).map(({ id }) => id));
}
const ids = (drafts: Draft[]) => drafts.map(({ id }) => id);

describe('a night is loaded with all that its fold needs', () => {
  test('entries come in the order of (at, seq), not of writing', async () => {
    const late = reading(null, '150', evening + minutes(1));
    const first = reading(null, '151', evening + minutes(30));
    const second = reading(null, '152', evening + minutes(30));
    const here = await kitchen([first, second, late]);
    const order = (await loadEntries(book.db, here, night)).map(({ id }) => id);
    expect(order.slice(1)).toEqual(ids([late, first, second]));
  });

  test('set-up however old comes; readings without food from outside the window do not', async () => {
    const cabinet = v7();
    const old = draft(
      'equipment',
      {
        equipment: cabinet,
        name: 'Cabinet 2',
        kind: 'heated_cabinet',
        set: null,
        order: 2,
        note: null,
        active: true,
      },
      evening - hours(9000),
    );
    const elsewhere = reading(null, '150', evening - hours(48));
    const here = await kitchen([old, elsewhere]);
    const found = await loaded(here);
    expect(found.has(old.id)).toBe(true);
    expect(found.has(elsewhere.id)).toBe(false);
  });

  test('a cabinet that went off before the window is still off; its last air reading is known', async () => {
    const cabinet = v7();
    const set = draft(
      'equipment',
      {
        equipment: cabinet,
        name: 'Cabinet 3',
        kind: 'heated_cabinet',
        set: null,
        order: 3,
        note: null,
        active: true,
      },
      evening - hours(9000),
    );
    const off = draft(
      'equipment_off',
      { equipment: cabinet, reason: 'no power', since_basis: null, text: null },
      evening - hours(30),
    );
    const air = reading(null, '150', evening - hours(31), { equipment: cabinet, spot: 'air' });
    const here = await kitchen([set, off, air]);
    const found = await loaded(here);
    for (const id of ids([set, off, air])) expect(found.has(id)).toBe(true);
  });

  test("a thermometer's checks around the window come with it: they make its readings suspect, or not", async () => {
    const probe = v7();
    const set = draft(
      'probe',
      {
        probe,
        name: 'Blue',
        colour: 'blue',
        type: null,
        scale: 'degF',
        unit: 'degF',
        step: 0.1,
        accuracy: null,
        home: null,
        active: true,
      },
      evening - hours(9000),
    );
    const check = (at: number) =>
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
        at,
      );
    const near = [check(evening - hours(20)), check(evening + hours(60))];
    const far = Array.from({ length: 5 }, (_, n) => check(evening - hours(500 + n)));
    const here = await kitchen([set, ...far, ...near]);
    const found = await loaded(here);
    for (const id of ids(near)) expect(found.has(id)).toBe(true);
    expect(far.filter(({ id }) => found.has(id)).length).toBeLessThan(far.length);
  });

  test('food that is still there brings all of its entries, however old', async () => {
    const batch = v7();
    const drafts = [
      batchOf(batch, 2, evening - hours(80)),
      step(batch, 'cold_hold', evening - hours(80)),
      reading(batch, '39', evening - hours(70)),
      step(batch, 'gone', evening - hours(60), [1]),
    ];
    const here = await kitchen(drafts);
    const found = await loaded(here);
    for (const id of ids(drafts)) expect(found.has(id)).toBe(true);
  });

  test('food that was wholly gone before the window is left out, unless it has an entry in it', async () => {
    const [quiet, touched] = [v7(), v7()];
    const life = (batch: string) => [
      batchOf(batch, 2, evening - hours(80)),
      step(batch, 'hot_hold', evening - hours(80)),
      step(batch, 'gone', evening - hours(75), [1]),
      step(batch, 'gone', evening - hours(74), [2]),
    ];
    const inWindow = reading(touched, '140', evening + hours(1));
    const [left, kept] = [life(quiet), [...life(touched), inWindow]];
    const here = await kitchen([...left, ...kept]);
    const found = await loaded(here);
    for (const id of ids(left)) expect(found.has(id)).toBe(false);
    for (const id of ids(kept)) expect(found.has(id)).toBe(true);
  });

  test('food that lived through a window in which nobody looked is loaded, after it is gone too', async () => {
    const batch = v7();
    const drafts = [
      batchOf(batch, null, evening - hours(20)),
      step(batch, 'cold_hold', evening - hours(20)),
      step(batch, 'gone', evening + hours(40)),
    ];
    const here = await kitchen(drafts);
    const found = await loaded(here);
    for (const id of ids(drafts)) expect(found.has(id)).toBe(true);
  });

  test('an end that was taken back is no end; the taking back taken back is one again', async () => {
    const batch = v7();
    const start = evening - hours(50);
    const gone = step(batch, 'gone', start + hours(2));
    const here = await kitchen([batchOf(batch, 1, start), step(batch, 'hot_hold', start), gone]);
    expect((await loaded(here)).has(gone.id)).toBe(false);
    const undo = amendment(gone.id, 'struck', 'true', start + hours(3));
    await add(here, [undo]);
    expect((await loaded(here)).has(gone.id)).toBe(true);
    await add(here, [amendment(undo.id, 'struck', 'true', start + hours(4))]);
    expect((await loaded(here)).has(gone.id)).toBe(false);
  });

  test('the food from which something was made comes with it', async () => {
    const [roast, pans] = [v7(), v7()];
    const old = [batchOf(roast, 1, evening - hours(60)), step(roast, 'gone', evening - hours(40))];
    const made = batchOf(pans, 2, evening - hours(41));
    made.body.source = [{ batch: roast, pieces: [1], words: null }];
    const here = await kitchen([...old, made, step(pans, 'hot_hold', evening - hours(41))]);
    const found = await loaded(here);
    for (const id of ids(old)) expect(found.has(id)).toBe(true);
  });

  test('corrections and decisions about the night come with it, however late they were written', async () => {
    const look = reading(null, '315', evening + hours(1));
    const deviation = draft(
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
        text: 'door ajar',
        lang: 'en',
      },
      evening + hours(2),
    );
    const decision = draft(
      'decision',
      {
        deviation: deviation.id,
        batch: null,
        pieces: null,
        decision: 'discard',
        confirms: null,
        decided_by: hand.device,
        decided_via: 'phone',
        reason: 'too long',
      },
      evening + hours(500),
    );
    const fix = amendment(look.id, 'value', '135', evening + hours(600));
    const undo = amendment(fix.id, 'struck', 'true', evening + hours(700));
    const here = await kitchen([look, deviation, decision, fix, undo]);
    const found = await loaded(here);
    for (const id of ids([look, deviation, decision, fix, undo])) expect(found.has(id)).toBe(true);
  });

  test('a signature comes with the day that it signs, not with the one on which it was given', async () => {
    const signature = draft(
      'signature',
      {
        day: '2026-10-16',
        revision: 1,
        from: '2026-10-16T09:00:00Z',
        to: '2026-10-17T09:00:00Z',
        name: 'Orla Quint',
        role: 'manager',
        meaning: 'I have reviewed this day',
        open_items: [],
        hash: '0'.repeat(64),
        head: null,
      },
      evening + hours(200),
    );
    const here = await kitchen([signature]);
    expect((await loaded(here)).has(signature.id)).toBe(true);
    expect(
      (await loaded(here, { fromMs: evening + hours(90), toMs: evening + hours(100) })).has(signature.id),
    ).toBe(false);
  });

  test('nothing of another site', async () => {
    const [here, other] = [await kitchen([]), await kitchen([reading(null, '150')])];
    expect((await loadEntries(book.db, here, night)).map((entry) => entry.site)).toEqual([here]);
    expect((await listSites(book.db)).map((one) => one.site)).toEqual(expect.arrayContaining([here, other]));
  });
});

test('the latest entry of a kind is the last by (at, seq), and kinds are loaded whole', async () => {
  const here = await kitchen([reading(null, '151', evening + minutes(9)), reading(null, '150', evening)]);
  expect((await latest(book.db, here, 'reading'))?.body.typed).toBe('151');
  expect(await latest(book.db, here, 'handover')).toBeNull();
  expect((await loadKinds(book.db, here, ['reading'])).map(({ body }) => body.typed)).toEqual(['150', '151']);
});

test('the lives kept while appending are those that the whole ledger tells', async () => {
  const batches = Array.from({ length: 12 }, () => v7());
  const drafts = batches.flatMap((batch, n) => {
    const at = evening - hours(n);
    const gone = step(batch, 'gone', at + hours(3), n % 3 === 0 ? [1] : null);
    const undo = n % 4 === 0 ? [amendment(gone.id, 'struck', 'true', at + hours(4))] : [];
    const moved = n % 5 === 0 ? [amendment(gone.id, 'at', '2026-10-20T00:00:00Z', at + hours(4))] : [];
    return [batchOf(batch, 2, at), step(batch, 'hot_hold', at), gone, ...undo, ...moved];
  });
  const here = await kitchen([]);
  for (const one of drafts) await add(here, [one]);
  const kept = await book.db
    .sql`select batch, from_ms, to_ms from batch_life where site = ${here} order by batch`;
  const told = livesOf(await loadAll(book.db, here)).sort((a, b) => (a.batch < b.batch ? -1 : 1));
  expect(
    kept.map(({ batch, from_ms, to_ms }) => ({
      batch,
      fromMs: Number(from_ms),
      toMs: to_ms === null ? null : Number(to_ms),
    })),
  ).toEqual(told);
  expect(told.filter(({ toMs }) => toMs === null).length).toBeGreaterThan(2);
  expect(told.filter(({ toMs }) => toMs !== null).length).toBeGreaterThan(2);
});
