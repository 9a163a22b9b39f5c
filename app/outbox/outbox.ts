import type { Draft } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import type { Receipt, SaidProblem } from '#shared/receipt.ts';

/** A draft that is on this phone and not in the book yet. */
export type Held = {
  draft: Draft;
  tried: number; // times it was sent; 0 = it never left this phone
  refused: Refusal | null; // null = not refused
  sure?: boolean; // the book asked whether it is a second look, and the person said yes
};

/** The book's words. `asks`: a question (is it a second look?) rather than a refusal for ever. */
type Refusal = { problem: string; remedy: string; asks?: boolean };

/** What stands between this phone and the book; null = nothing known. Words where the server said them. */
export type Fault = { problem: string; words: { problem: string; remedy: string } | null };

export type OutboxNow = { held: readonly Held[]; fault: Fault | null; durable: boolean; posting: boolean };

type Answer = { receipts: Receipt[] } | { problems: (Problem & { words?: Fault['words'] })[] };

/** What the outbox needs from its surroundings: a store that outlives a reload, the way to the book, a timer. */
export type Around = {
  store: Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'> | null;
  /** `sure`: ids of looks like one already there that the person did make a second time. */
  post: (drafts: Draft[], sure: string[]) => Promise<Answer>;
  later: (run: () => void, ms: number) => void;
};

export type Outbox = {
  now: () => OutboxNow;
  subscribe: (changed: () => void) => () => void;
  /** Keeps the drafts on this phone, then sends them at once. */
  write: (drafts: readonly Draft[]) => void;
  /** Takes back a draft that never left, or one that the book refused. */
  drop: (id: string) => void;
  /** The book surely does not have it: it was never sent, or it was refused. */
  unsent: (id: string) => boolean;
  /** Sends what is here now: when a page opens, or when the network is back. What the book refused waits. */
  send: () => Promise<void>;
  /** It is a second look, like one that the book has: sends it to be written all the same. */
  meant: (id: string) => Promise<void>;
  /** Sends everything once more, what was refused too. */
  again: () => Promise<void>;
};

const mostAtOnce = 50;
const waits = [1_000, 2_000, 5_000, 10_000, 30_000]; // ms between tries; the last one goes on

/**
 * Entries of one site on their way to the book. Each is kept under a key of its own, so that two pages of one
 * phone cannot overwrite each other, and stays until the book has acknowledged it. Sending one twice is
 * harmless: the book knows its id.
 */
export function openOutbox(site: string, around: Around): Outbox {
  const prefix = `holdproof.out.${site}.`;
  const listeners = new Set<() => void>();
  let state: OutboxNow = {
    held: stored(prefix, around.store),
    fault: null,
    durable: around.store !== null,
    posting: false,
  };
  let failures = 0;
  let waiting = false;

  const set = (next: Partial<OutboxNow>): void => {
    state = { ...state, ...next };
    for (const changed of listeners) changed();
  };
  const keep = (held: Held): void => {
    try {
      around.store?.setItem(prefix + held.draft.id, JSON.stringify(held));
    } catch {
      set({ durable: false }); // the phone's store is full or shut: this page still holds it, and says so
    }
  };
  const forget = (ids: ReadonlySet<string>): void => {
    for (const id of ids) around.store?.removeItem(prefix + id);
    set({ held: state.held.filter((h) => !ids.has(h.draft.id)) });
  };
  const replace = (changed: Held): void => {
    keep(changed);
    set({ held: state.held.map((h) => (h.draft.id === changed.draft.id ? changed : h)) });
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

  const settle = (receipts: readonly Receipt[]): void => {
    failures = 0;
    set({ fault: null });
    forget(new Set(receipts.flatMap((r) => (r.seq !== null && r.id !== null ? [r.id] : []))));
    for (const { id, problem } of receipts) {
      const held = state.held.find((h) => h.draft.id === id);
      if (held && problem) replace({ ...held, refused: refusal(problem) });
    }
  };

  const send = async (): Promise<void> => {
    const going = state.held.filter((h) => h.refused === null).slice(0, mostAtOnce);
    if (state.posting || going.length === 0) return;
    set({ posting: true });
    for (const held of going) replace({ ...held, tried: held.tried + 1 });
    const answer = await around
      .post(
        going.map((h) => h.draft),
        going.flatMap((h) => (h.sure ? [h.draft.id] : [])),
      )
      .catch((): Answer => ({ problems: [noNetwork] }));
    set({ posting: false });
    if ('receipts' in answer) settle(answer.receipts);
    else {
      const first: Problem & { words?: Fault['words'] } = answer.problems[0] ?? noNetwork;
      failures += 1;
      set({ fault: { problem: first.problem, words: first.words ?? null } });
      retry();
      return;
    }
    if (state.held.some((h) => h.refused === null)) await send();
  };

  return {
    now: () => state,
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    write: (drafts) => {
      const added = drafts.map((draft): Held => ({ draft, tried: 0, refused: null }));
      for (const held of added) keep(held);
      set({ held: [...state.held, ...added] });
      void send();
    },
    drop: (id) => forget(new Set([id])),
    unsent: (id) => state.held.some((h) => h.draft.id === id && (h.tried === 0 || h.refused !== null)),
    send,
    meant: (id) => {
      const held = state.held.find((h) => h.draft.id === id);
      if (held) replace({ ...held, refused: null, sure: true });
      return send();
    },
    again: () => {
      for (const held of state.held) if (held.refused) replace({ ...held, refused: null });
      return send();
    },
  };
}

const refusal = ({ problem, words }: SaidProblem): Refusal =>
  problem === 'duplicate' ? { ...words, asks: true } : words;

const noNetwork = { field: '', problem: 'no_network', remedy: 'kept_here_retry', values: {} };

/** What an earlier page left behind, oldest first (ids sort by the time they were made). Odd records are left alone. */
function stored(prefix: string, store: Around['store']): Held[] {
  if (store === null) return [];
  const found: Held[] = [];
  for (let i = 0; i < store.length; i += 1) {
    const key = store.key(i);
    const held = key?.startsWith(prefix) ? read(store.getItem(key)) : null;
    if (held) found.push(held);
  }
  return found.sort((a, b) => (a.draft.id < b.draft.id ? -1 : 1));
}

function read(text: string | null): Held | null {
  try {
    const held = JSON.parse(text ?? 'null') as Held | null;
    return typeof held?.draft?.id === 'string' ? held : null;
  } catch {
    return null;
  }
}
