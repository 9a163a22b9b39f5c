import type { Entry, EntryOf, Kind } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';

const instants = new WeakMap<Entry, number>();

/** When an entry was observed, in ms. Entries never change, so each is read once. */
export function whenOf(entry: Entry): number {
  const known = instants.get(entry);
  if (known !== undefined) return known;
  const at = msOf(entry.at);
  instants.set(entry, at);
  return at;
}

const bySeq = (a: Entry, b: Entry): number => a.seq - b.seq || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/**
 * Entries in the order of a fold: (at, seq). An id that comes twice is taken once, an `at` that is no instant is
 * left out (the schema has refused it before).
 */
export function inOrder(entries: readonly Entry[]): Entry[] {
  const once = new Map<string, Entry>();
  for (const entry of entries) if (!once.has(entry.id)) once.set(entry.id, entry);
  return [...once.values()]
    .filter((entry) => Number.isFinite(whenOf(entry)))
    .sort((a, b) => whenOf(a) - whenOf(b) || bySeq(a, b));
}

/** Those of one kind, in the order given. */
export const ofKind = <K extends Kind>(entries: readonly Entry[], kind: K): EntryOf<K>[] =>
  entries.filter((entry): entry is EntryOf<K> & Entry => entry.kind === kind);

/** Seen at `asOf` (ms): observed then or before. */
export const seenAt =
  (asOf: number) =>
  (entry: Entry): boolean =>
    whenOf(entry) <= asOf;
