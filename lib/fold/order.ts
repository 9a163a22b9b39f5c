import type { Entry, EntryOf, Kind } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';

/** An entry with its instant as a number, so that nothing parses the same text twice. */
export type Timed<K extends Kind = Kind> = { ms: number; entry: EntryOf<K> };

const bySeq = (a: Entry, b: Entry): number => a.seq - b.seq || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/**
 * Entries in the order of a fold: (at, seq). An id that comes twice is taken once, an `at` that is no instant is
 * left out (the schema has refused it before).
 */
export function inOrder(entries: readonly Entry[]): Entry[] {
  const once = new Map<string, Entry>();
  for (const entry of entries) if (!once.has(entry.id)) once.set(entry.id, entry);
  return [...once.values()]
    .map((entry) => ({ entry, ms: msOf(entry.at) }))
    .filter(({ ms }) => Number.isFinite(ms))
    .sort((a, b) => a.ms - b.ms || bySeq(a.entry, b.entry))
    .map(({ entry }) => entry);
}

/** Those of one kind, in the order given. */
export const ofKind = <K extends Kind>(entries: readonly Entry[], kind: K): EntryOf<K>[] =>
  entries.filter((entry): entry is EntryOf<K> & Entry => entry.kind === kind);

/** Seen at `asOf` (ms): observed then or before. */
export const seenAt =
  (asOf: number) =>
  (entry: Entry): boolean =>
    msOf(entry.at) <= asOf;
