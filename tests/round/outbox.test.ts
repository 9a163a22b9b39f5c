import { describe, expect, test } from 'vitest';
import { type Around, openOutbox } from '#app/outbox/outbox.ts';
import { noteDraft } from '#app/round/drafts.ts';
import type { Draft } from '#shared/entries/entry.ts';
import type { Receipt } from '#shared/receipt.ts';

const site = '01999999-0000-7000-8000-000000000001';
const by = '01999999-0000-7000-8000-00000000000a';
const idOf = (n: number): string => `01999999-0000-7000-8000-${String(n).padStart(12, '0')}`;
const note = (n: number): Draft =>
  noteDraft(
    { now: 1_760_000_000_000, by, id: () => idOf(n) },
    {
      text: 'x',
      lang: 'en',
      batch: null,
      piece: null,
      equipment: null,
      probe: null,
      round: null,
      could_not: null,
    },
  );

const taken = (draft: Draft, seq: number): Receipt => ({
  id: draft.id,
  seq,
  received_at: '2026-10-16T08:00:00Z',
  known: 'tap',
  problem: null,
  problems: [],
});

function store(): NonNullable<Around['store']> & { size: () => number } {
  const map = new Map<string, string>();
  return {
    getItem: (key) => map.get(key) ?? null,
    setItem: (key, value) => void map.set(key, value),
    removeItem: (key) => void map.delete(key),
    key: (i) => [...map.keys()][i] ?? null,
    get length() {
      return map.size;
    },
    size: () => map.size,
  };
}

const settled = async (): Promise<void> => {
  for (let i = 0; i < 20; i += 1) await Promise.resolve();
};

describe('what was written stays on the phone until the book has it', () => {
  test('an acknowledged entry leaves the phone', async () => {
    const phone = store();
    const outbox = openOutbox(site, {
      store: phone,
      post: async (drafts) => ({ receipts: drafts.map((d, i) => taken(d, i + 1)) }),
      later: () => {},
    });
    outbox.write([note(1), note(2)]);
    await settled();
    expect(outbox.now().held).toEqual([]);
    expect(phone.size()).toBe(0);
  });

  test('a reload in the middle of a lost network loses nothing and keeps the order', async () => {
    const phone = store();
    const lost: Around = {
      store: phone,
      post: async () => {
        throw new TypeError('Failed to fetch');
      },
      later: () => {},
    };
    const before = openOutbox(site, lost);
    before.write([note(2)]);
    before.write([note(1)]);
    await settled();
    const sent: string[] = [];
    const after = openOutbox(site, {
      ...lost,
      post: async (drafts) => {
        sent.push(...drafts.map((d) => d.id));
        return { receipts: drafts.map((d, i) => taken(d, i + 1)) };
      },
    });
    expect(after.now().held).toHaveLength(2);
    await after.send();
    expect(sent).toEqual([idOf(1), idOf(2)]);
    expect(phone.size()).toBe(0);
  });

  test('a failure says what is in the way, waits longer each time and sends the same ids again', async () => {
    const waits: number[] = [];
    let run: () => void = () => {};
    const sent: string[] = [];
    let down = true;
    const outbox = openOutbox(site, {
      store: store(),
      post: async (drafts) => {
        sent.push(...drafts.map((d) => d.id));
        if (down)
          return {
            problems: [{ field: '', problem: 'database_unreachable', remedy: 'kept_here_retry', values: {} }],
          };
        return { receipts: drafts.map((d, i) => taken(d, i + 1)) };
      },
      later: (go, ms) => {
        waits.push(ms);
        run = go;
      },
    });
    outbox.write([note(1)]);
    await settled();
    expect(outbox.now().fault?.problem).toBe('database_unreachable');
    run();
    await settled();
    expect(waits[1]).toBeGreaterThan(waits[0] ?? 0);
    down = false;
    run();
    await settled();
    expect(sent).toEqual([idOf(1), idOf(1), idOf(1)]);
    expect(outbox.now()).toMatchObject({ held: [], fault: null });
  });

  test('a refused entry stays with the words of the book, is not sent again by itself, and may be dropped', async () => {
    const phone = store();
    const words = { problem: 'This piece is gone.', remedy: 'Choose another piece.' };
    let posts = 0;
    const outbox = openOutbox(site, {
      store: phone,
      post: async (drafts) => {
        posts += 1;
        const problem = {
          field: 'body.piece',
          problem: 'piece_gone',
          remedy: 'other_piece',
          values: {},
          words,
        };
        return {
          receipts: drafts.map((d) => ({
            ...taken(d, 0),
            seq: null,
            received_at: null,
            known: null,
            problem,
            problems: [problem],
          })),
        };
      },
      later: () => {},
    });
    outbox.write([note(1)]);
    await settled();
    await outbox.send();
    expect(posts).toBe(1);
    expect(outbox.now().held[0]?.refused).toEqual(words);
    expect(outbox.unsent(idOf(1))).toBe(true);
    await outbox.again();
    expect(posts).toBe(2);
    outbox.drop(idOf(1));
    expect(phone.size()).toBe(0);
  });

  test('an entry that was tried once may be in the book: it no longer counts as never sent', async () => {
    const outbox = openOutbox(site, { store: store(), post: () => new Promise(() => {}), later: () => {} });
    outbox.write([note(1)]);
    expect(outbox.unsent(idOf(1))).toBe(false);
  });

  test('a full store is said, and the page still holds the entry', async () => {
    const full = store();
    full.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    const outbox = openOutbox(site, { store: full, post: () => new Promise(() => {}), later: () => {} });
    outbox.write([note(1)]);
    expect(outbox.now()).toMatchObject({ durable: false });
    expect(outbox.now().held).toHaveLength(1);
  });

  test('entries of another kitchen are left alone', () => {
    const phone = store();
    openOutbox('other', { store: phone, post: () => new Promise(() => {}), later: () => {} }).write([
      note(1),
    ]);
    expect(
      openOutbox(site, { store: phone, post: () => new Promise(() => {}), later: () => {} }).now().held,
    ).toEqual([]);
  });
});
