import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  type Around,
  type Held,
  type HeldStore,
  type Outbox,
  openOutbox,
  type Spoken,
} from '#app/outbox/outbox.ts';
import { heldStore, phoneStore } from '#app/outbox/phone-store.ts';
import { noteDraft } from '#app/round/drafts.ts';
import type { Draft } from '#shared/entries/entry.ts';
import type { Receipt, SaidProblem } from '#shared/receipt.ts';

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
const refused = (draft: Draft, name: string): Receipt => {
  const words = { problem: 'Said so.', remedy: 'Do so.' };
  const problem: SaidProblem = { field: 'by', problem: name, remedy: 'r', values: {}, words };
  return { ...taken(draft, 0), seq: null, received_at: null, known: null, problem, problems: [problem] };
};

const allTaken: Around['post'] = async (drafts) => ({ receipts: drafts.map((d, i) => taken(d, i + 1)) });
const never: Around['post'] = () => new Promise(() => {});
const lost: Around['post'] = async () => {
  throw new TypeError('Failed to fetch');
};

const kept = { page: new Map<string, string>(), worker: new Map<string, string>() };
const pageStorage = {
  getItem: (key: string) => kept.page.get(key) ?? null,
  setItem: (key: string, text: string) => void kept.page.set(key, text),
};
const workerCache = {
  match: async (key: string) => {
    const text = kept.worker.get(key);
    return text === undefined ? undefined : new Response(text);
  },
  put: async (key: string, response: Response) => void kept.worker.set(key, await response.text()),
};

/** What a page has to count in: its own storage and, like the worker, the caches. */
function asPage(): void {
  vi.stubGlobal('caches', { open: async () => workerCache });
  vi.stubGlobal('localStorage', pageStorage);
}
const asWorker = (): void => void vi.stubGlobal('localStorage', undefined);
afterEach(() => {
  vi.unstubAllGlobals();
  for (const place of Object.values(kept)) place.clear();
});

/** An outbox over the phone's own database, on a way to the book that is given. */
const open = (post: Around['post'], more: Partial<Around> = {}): Outbox =>
  openOutbox({
    store: async () => heldStore(site),
    post,
    later: () => {},
    alone: async (run) => {
      await run();
      return true;
    },
    ...more,
  });

const onPhone = (): Promise<number> => phoneStore().out.count();

beforeEach(async () => {
  await phoneStore().out.clear();
});

describe('what was written stays on the phone until the book has it', () => {
  test('an entry is in the phone’s database before it is sent, and leaves it once acknowledged', async () => {
    const keptAtSending: number[] = [];
    const outbox = open(async (drafts, spoken) => {
      keptAtSending.push(await onPhone());
      return allTaken(drafts, spoken);
    });
    await outbox.write([note(1), note(2)]);
    await expect.poll(() => outbox.now().held).toEqual([]);
    expect(keptAtSending).toEqual([2]);
    expect(await onPhone()).toBe(0);
  });

  test('a reload in the middle of a lost network loses nothing and keeps the order', async () => {
    const before = open(lost);
    await before.write([note(2)]);
    await before.write([note(1)]);
    await expect.poll(() => before.now().fault?.problem).toBe('no_network');
    const sent: string[] = [];
    const after = open(async (drafts, spoken) => {
      sent.push(...drafts.map((d) => d.id));
      return allTaken(drafts, spoken);
    });
    await after.ready;
    expect(after.now().held.map(({ draft }) => draft.id)).toEqual([idOf(1), idOf(2)]);
    await after.send();
    expect(sent).toEqual([idOf(1), idOf(2)]);
    expect(await onPhone()).toBe(0);
  });

  test('a failure says what is in the way, waits longer each time and sends the same ids again', async () => {
    const waits: number[] = [];
    let run: () => void = () => {};
    const sent: string[] = [];
    let down = true;
    const away = { field: '', problem: 'database_unreachable', remedy: 'kept_here_retry', values: {} };
    const outbox = open(
      async (drafts, spoken) => {
        sent.push(...drafts.map((d) => d.id));
        return down ? { problems: [away] } : allTaken(drafts, spoken);
      },
      {
        later: (go, ms) => {
          waits.push(ms);
          run = go;
        },
      },
    );
    await outbox.write([note(1)]);
    await expect.poll(() => waits.length).toBe(1);
    expect(outbox.now().fault?.problem).toBe('database_unreachable');
    run();
    await expect.poll(() => waits.length).toBe(2);
    expect(waits[1]).toBeGreaterThan(waits[0] ?? 0);
    down = false;
    run();
    await expect.poll(() => outbox.now().held.length).toBe(0);
    expect(sent).toEqual([idOf(1), idOf(1), idOf(1)]);
    expect(outbox.now().fault).toBeNull();
  });

  test('while another page sends, a form asks again at once, however long earlier failures made it wait', async () => {
    const waits: number[] = [];
    const runs: (() => void)[] = [];
    let other = false; // another page, or the worker, is sending
    const outbox = open(lost, {
      later: (go, ms) => {
        waits.push(ms);
        runs.push(go);
      },
      alone: async (run) => {
        if (!other) await run();
        return !other;
      },
    });
    await outbox.write([note(1)]);
    for (let failure = 1; failure < 6; failure += 1) {
      await expect.poll(() => waits.length).toBe(failure);
      if (failure < 5) runs.at(-1)?.();
    }
    expect(waits.at(-1)).toBe(30_000);
    const fault = outbox.now().fault;
    other = true;
    await outbox.write([note(2)]);
    await expect.poll(() => waits.length).toBe(6);
    expect(waits.at(-1)).toBeLessThanOrEqual(1_000);
    other = false;
    runs.at(-1)?.();
    await expect.poll(() => outbox.now().fault !== fault).toBe(true);
  });

  test('a refused entry stays with the words of the book, is not sent again by itself, and may be dropped', async () => {
    let posts = 0;
    const outbox = open(async (drafts) => {
      posts += 1;
      return { receipts: drafts.map((d) => refused(d, 'piece_gone')) };
    });
    await outbox.write([note(1)]);
    await expect.poll(() => outbox.now().held[0]?.refused).toEqual({ problem: 'Said so.', remedy: 'Do so.' });
    await outbox.send();
    expect(posts).toBe(1);
    expect(outbox.unsent(idOf(1))).toBe(true);
    await outbox.again();
    expect(posts).toBe(2);
    outbox.drop(idOf(1));
    await expect.poll(onPhone).toBe(0);
  });

  test('an entry that was tried once may be in the book: it no longer counts as never sent', async () => {
    const outbox = open(never);
    await outbox.write([note(1)]);
    await expect.poll(() => outbox.unsent(idOf(1))).toBe(false);
  });

  test('a full store is said, and the page still holds and sends the entry', async () => {
    const sent: string[] = [];
    const full: HeldStore = {
      all: async () => [],
      put: async () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
      remove: async () => {},
      expected: async () => 0,
    };
    const outbox = open(
      async (drafts) => {
        sent.push(...drafts.map((d) => d.id));
        return new Promise(() => {});
      },
      { store: async () => full },
    );
    await outbox.write([note(1)]);
    expect(outbox.now()).toMatchObject({ durable: false });
    expect(outbox.now().held).toHaveLength(1);
    await expect.poll(() => sent).toEqual([idOf(1)]);
  });

  test('a store that the browser emptied is noticed and said', async () => {
    const emptied: HeldStore = { ...heldStore(site), all: async () => [], expected: async () => 3 };
    const outbox = open(allTaken, { store: async () => emptied });
    await outbox.ready;
    expect(outbox.now().lost).toBe(3);
  });

  test('what was written on a page and is gone from its database is missed by the next page', async () => {
    asPage();
    await open(never).write([note(1), note(2)]);
    await expect.poll(async () => (await heldStore(site).all()).map(({ tried }) => tried)).toEqual([1, 1]);
    await phoneStore().out.clear(); // as a browser does that needs the room
    const next = open(never);
    await next.ready;
    expect(next.now().lost).toBe(2);
  });

  test('what the worker sent while no page was open is not missed by the next page', async () => {
    asPage();
    const page = open(lost);
    await page.write([note(1), note(2)]);
    asWorker();
    await open(allTaken).send();
    expect(await onPhone()).toBe(0);
    asPage();
    const next = open(never);
    await next.ready;
    expect(next.now()).toMatchObject({ held: [], lost: 0 });
  });

  test('nor what another page sent between two looks of an opening one', async () => {
    asPage();
    await open(lost).write([note(1)]);
    const store = heldStore(site);
    const slow: HeldStore = {
      ...store,
      all: async () => {
        await store.remove([idOf(1)]);
        return store.all();
      },
    };
    const next = open(never, { store: async () => slow });
    await next.ready;
    expect(next.now()).toMatchObject({ held: [], lost: 0 });
  });

  test('entries of another kitchen are left alone', async () => {
    await heldStore('other').put([{ draft: note(1), tried: 0, refused: null } satisfies Held]);
    const outbox = open(never);
    await outbox.ready;
    expect(outbox.now().held).toEqual([]);
  });
});

describe('what was written while nobody was signed in', () => {
  test('is kept and marked, sent with that mark, and goes in when a lead accepts it', async () => {
    const said: Spoken[] = [];
    let answer: 'out' | 'lead' | 'taken' = 'out';
    const outbox = open(async (drafts, spoken) => {
      said.push(spoken);
      if (answer === 'out')
        return { problems: [{ field: '', problem: 'nobody_signed_in', remedy: 'sign_in', values: {} }] };
      if (answer === 'lead') return { receipts: drafts.map((d) => refused(d, 'lead_accepts')) };
      return allTaken(drafts, spoken);
    });
    await outbox.write([note(1)]);
    await expect.poll(() => outbox.now().held[0]?.waited).toBe(true);
    answer = 'lead';
    await outbox.send();
    expect(said.at(-1)?.waited).toEqual([idOf(1)]);
    expect(outbox.now().held[0]?.refused?.lead).toBe(true);
    expect(await onPhone()).toBe(1);
    answer = 'taken';
    await outbox.accept([idOf(1)]);
    expect(said.at(-1)?.accepted).toEqual([idOf(1)]);
    expect(outbox.now().held).toEqual([]);
  });
});

test('two pages of one phone give each entry once: one that another page sent is let go', async () => {
  const one = open(lost);
  const two = open(lost);
  await one.write([note(1)]);
  await two.reread();
  expect(two.now().held).toHaveLength(1);
  await heldStore(site).remove([idOf(1)]);
  await one.reread();
  expect(one.now().held).toEqual([]);
});
