import type { Entry, EntryOf } from '#shared/entries/entry.ts';

/**
 * Whether the sheet of a day is signed as it now stands. `changed`: it was signed, and its text is another one now;
 * the new text is a revision of its own, and unsigned.
 */
export type SheetState = {
  state: 'not_over' | 'unsigned' | 'signed' | 'changed';
  revision: number;
  hash: string;
  /** Every signature of the day, in order; the last is the one that `signed` and `changed` speak of. */
  signatures: EntryOf<'signature'>[];
};

/** @param now the canonical day's own hash, and whether the day is over */
export function sheetState(
  entries: readonly Entry[],
  day: string,
  now: { hash: string; over: boolean },
): SheetState {
  const signatures = entries
    .filter((entry): entry is EntryOf<'signature'> => entry.kind === 'signature' && entry.body.day === day)
    .sort((a, b) => a.seq - b.seq);
  const hashes = [...new Set(signatures.map((entry) => entry.body.hash))];
  const revision = revisionOf(hashes, now.hash);
  const base = { revision, hash: now.hash, signatures };
  if (hashes.includes(now.hash)) return { ...base, state: 'signed' };
  if (!now.over) return { ...base, state: 'not_over' };
  return { ...base, state: hashes.length > 0 ? 'changed' : 'unsigned' };
}

/** Texts are numbered from 1 in the order in which they were first signed; a text not yet signed is the next one. */
export function revisionOf(signedHashes: readonly string[], hash: string): number {
  const at = signedHashes.indexOf(hash);
  return at >= 0 ? at + 1 : signedHashes.length + 1;
}
