import type { Draft } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import type { Receipt, SaidProblem } from '#shared/receipt.ts';

/** A draft that is on this phone and not in the book yet. */
export type Held = {
  draft: Draft;
  tried: number; // times it was sent; 0 = it never left this phone
  refused: Refusal | null; // null = not refused
  sure?: boolean; // the book asked whether it is a second look, and the person said yes
  waited?: boolean; // it came when nobody was signed in on this phone: its writer or a lead has to stand for it
  accepted?: boolean; // a lead at this phone stands for it
  kept?: boolean; // the phone's store has it; until then nothing is said to be saved
};

/** The book's words. `asks`: a question (is it a second look?); `lead`: a lead may accept it. */
export type Refusal = { problem: string; remedy: string; asks?: boolean; lead?: boolean };

/** What stands between this phone and the book; null = nothing known. Words where the server said them. */
export type Fault = { problem: string; words: { problem: string; remedy: string } | null };

export type OutboxNow = {
  held: readonly Held[];
  fault: Fault | null;
  durable: boolean; // false = the store is shut or full: only this page holds the entries
  lost: number; // entries that this phone held and no longer has: its store was emptied
  posting: boolean;
};

type Answer = { receipts: Receipt[] } | { problems: (Problem & { words?: Fault['words'] })[] };

/** Where a phone keeps what is not in the book yet. Each call settles when the phone has it on its disk. */
export type HeldStore = {
  all: () => Promise<Held[]>;
  put: (held: readonly Held[]) => Promise<void>;
  remove: (ids: readonly string[]) => Promise<void>;
  /** How many it should hold: kept apart, so that an emptied store is noticed. */
  expected: () => Promise<number>;
};

/** Ids with a word of their own for the book: made a second time on purpose, written unsigned, accepted by a lead. */
export type Spoken = { sure: string[]; waited: string[]; accepted: string[] };

/** What the outbox needs from its surroundings: a store that outlives a reload, the way to the book, a timer. */
export type Around = {
  store: () => Promise<HeldStore | null>; // null = there is none
  post: (drafts: Draft[], spoken: Spoken) => Promise<Answer>;
  later: (run: () => void, ms: number) => void;
  /** Runs when no other page or worker of this phone is sending; false = another is. */
  alone: (run: () => Promise<void>) => Promise<boolean>;
};

export type Outbox = {
  now: () => OutboxNow;
  /** Settles when what earlier pages left behind is known. */
  ready: Promise<void>;
  subscribe: (changed: () => void) => () => void;
  /** Keeps the drafts on this phone, then sends them at once. Settles when the phone's store has them. */
  write: (drafts: readonly Draft[]) => Promise<void>;
  /** Takes back a draft that never left, or one that the book refused. */
  drop: (id: string) => void;
  /** The book surely does not have it: it was never sent, or it was refused. */
  unsent: (id: string) => boolean;
  /** Sends what is here now: when a page opens, or when the network is back. What the book refused waits. */
  send: () => Promise<void>;
  /** It is a second look, like one that the book has: sends it to be written all the same. */
  meant: (id: string) => Promise<void>;
  /** A lead at this phone stands for what was written while its writer was not signed in. */
  accept: (ids: readonly string[]) => Promise<void>;
  /** Sends everything once more, what was refused too. */
  again: () => Promise<void>;
  /** Another page of this phone, or its worker, changed the store. */
  reread: () => Promise<void>;
};

const mostAtOnce = 50;
const waits = [1_000, 2_000, 5_000, 10_000, 30_000]; // ms between tries; the last one goes on
const knockMs = 500; // a form waits for its answer, however long earlier failures make the next try wait
const signedOut: ReadonlySet<string> = new Set(['nobody_signed_in', 'device_unknown']);
const byAge = (a: Held, b: Held): number => (a.draft.id < b.draft.id ? -1 : 1); // ids sort by the time they were made

/**
 * Entries of one site on their way to the book, oldest first. Each stays in the phone's store until the book has
 * acknowledged it. Sending one twice is harmless: the book knows its id.
 */
export function openOutbox(around: Around): Outbox {
  const listeners = new Set<() => void>();
  let state: OutboxNow = { held: [], fault: null, durable: true, lost: 0, posting: false };
  let store: HeldStore | null = null;
  let failures = 0;
  let waiting = false;
  let knocking = false; // another page was sending when this one wanted to
  let again = false; // something came while another was sending

  const set = (next: Partial<OutboxNow>): void => {
    state = { ...state, ...next };
    for (const changed of listeners) changed();
  };
  const keep = async (changed: readonly Held[]): Promise<void> => {
    await ready;
    try {
      if (store === null) throw new Error('no store');
      await store.put(changed.map((held) => ({ ...held, kept: true })));
      mark(changed, { kept: true });
    } catch {
      set({ durable: false }); // the phone's store is full or shut: this page still holds it, and says so
    }
  };
  const mark = (which: readonly Held[], say: Partial<Held>): Held[] => {
    const ids = new Set(which.map((h) => h.draft.id));
    const next = state.held.map((h) => (ids.has(h.draft.id) ? { ...h, ...say } : h));
    set({ held: next });
    return next.filter((h) => ids.has(h.draft.id));
  };
  const forget = async (ids: readonly string[]): Promise<void> => {
    const gone = new Set(ids);
    await store?.remove(ids).catch(() => {});
    set({ held: state.held.filter((h) => !gone.has(h.draft.id)) });
  };

  const reread = async (): Promise<void> => {
    const kept = (await store?.all().catch(() => null)) ?? null;
    if (kept === null) return;
    const ids = new Set(kept.map((h) => h.draft.id));
    const here = state.held.filter((h) => h.kept !== true && !ids.has(h.draft.id)); // only this page has them
    set({ held: [...kept.map((h) => ({ ...h, kept: true })), ...here].sort(byAge) });
  };

  const opening = async (): Promise<void> => {
    store = await around.store().catch(() => null);
    if (store === null) return set({ durable: false });
    const before = await store.expected();
    await reread();
    const found = state.held.filter((h) => h.kept).length;
    const expected = Math.min(before, await store.expected()); // another page may have sent some meanwhile
    if (expected > found) set({ lost: expected - found });
  };

  const retry = (): void => {
    if (waiting) return;
    waiting = true;
    around.later(
      () => {
        waiting = false;
        void send();
      },
      waits[Math.min(failures, waits.length) - 1] ?? waits[0] ?? 1_000,
    );
  };

  const soon = (): void => {
    if (knocking) return;
    knocking = true;
    around.later(() => {
      knocking = false;
      void send();
    }, knockMs);
  };

  const settle = async (receipts: readonly Receipt[]): Promise<void> => {
    failures = 0;
    set({ fault: null });
    await forget(receipts.flatMap((r) => (r.seq !== null && r.id !== null ? [r.id] : [])));
    for (const { id, problem } of receipts) {
      const held = state.held.find((h) => h.draft.id === id);
      if (held && problem) await keep(mark([held], { refused: refusal(problem) }));
    }
  };

  const failed = async (going: readonly Held[], problem: Fault): Promise<void> => {
    failures += 1;
    set({ fault: problem });
    if (signedOut.has(problem.problem)) await keep(mark(going, { waited: true }));
    retry();
  };

  const sendOnce = async (): Promise<boolean> => {
    const going = state.held.filter((h) => h.refused === null).slice(0, mostAtOnce);
    if (going.length === 0) return false;
    const sent = mark(going, {}).map((h) => ({ ...h, tried: h.tried + 1 }));
    for (const held of sent) mark([held], { tried: held.tried });
    await keep(sent); // before it leaves: after this it may be in the book
    const idsOf = (of: (h: Held) => boolean | undefined): string[] =>
      sent.flatMap((h) => (of(h) ? [h.draft.id] : []));
    const answer = await around
      .post(
        sent.map((h) => h.draft),
        {
          sure: idsOf((h) => h.sure),
          waited: idsOf((h) => h.waited),
          accepted: idsOf((h) => h.accepted),
        },
      )
      .catch((): Answer => ({ problems: [noNetwork] }));
    if ('receipts' in answer) {
      await settle(answer.receipts);
      return state.held.some((h) => h.refused === null);
    }
    const first: Problem & { words?: Fault['words'] } = answer.problems[0] ?? noNetwork;
    await failed(sent, { problem: first.problem, words: first.words ?? null });
    return false;
  };

  const send = async (): Promise<void> => {
    await ready;
    if (state.posting) {
      again = true;
      return;
    }
    if (!state.held.some((h) => h.refused === null)) return;
    set({ posting: true });
    const ran = await around
      .alone(async () => {
        do again = false;
        while ((await sendOnce()) || again);
      })
      .finally(() => set({ posting: false }));
    if (!ran) soon(); // another page, or the worker, is at it: for a moment, or it is asleep
  };

  const ready = opening();

  return {
    now: () => state,
    ready,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    write: async (drafts) => {
      const added = drafts.map((draft): Held => ({ draft, tried: 0, refused: null }));
      set({ held: [...state.held, ...added] });
      await keep(added);
      void send();
    },
    drop: (id) => void forget([id]),
    unsent: (id) => state.held.some((h) => h.draft.id === id && (h.tried === 0 || h.refused !== null)),
    send,
    meant: async (id) => {
      await keep(
        mark(
          state.held.filter((h) => h.draft.id === id),
          { refused: null, sure: true },
        ),
      );
      return send();
    },
    accept: async (ids) => {
      const which = state.held.filter((h) => ids.includes(h.draft.id));
      await keep(mark(which, { refused: null, accepted: true }));
      return send();
    },
    again: async () => {
      await keep(
        mark(
          state.held.filter((h) => h.refused !== null),
          { refused: null },
        ),
      );
      return send();
    },
    reread,
  };
}

const refusal = ({ problem, words }: SaidProblem): Refusal =>
  problem === 'duplicate'
    ? { ...words, asks: true }
    : problem === 'lead_accepts'
      ? { ...words, lead: true }
      : words;

const noNetwork = { field: '', problem: 'no_network', remedy: 'kept_here_retry', values: {} };
