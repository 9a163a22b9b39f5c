import type { Entry, EntryOf } from '#shared/entries/entry.ts';

/**
 * Whether the sheet of a day is signed as it now stands. `changed`: it was signed, and its text is another one now;
 * the new text is a revision of its own, and unsigned.
 */
export type SheetState = {
  state: 'not_over' | 'unsigned' | 'signed' | 'changed';
  revision: number;
  hash: string;
  /** The last signature under the text as it now stands; null = none. */
  signed: EntryOf<'signature'> | null;
  /** Every signature of the day, in order. */
  signatures: EntryOf<'signature'>[];
};

/** @param now the canonical day's own hash, and whether the day is over */
export function sheetState(
  entries: readonly Entry[],
  day: string,
  now: { hash: string; over: boolean },
): SheetState {
  const signatures = signaturesOf(entries, day);
  const revision = revisionOf(
    signatures.map((entry) => entry.body.hash),
    now.hash,
  );
  const signed = signatures.findLast((entry) => entry.body.hash === now.hash) ?? null;
  const base = { revision, hash: now.hash, signed, signatures };
  if (signed) return { ...base, state: 'signed' };
  if (!now.over) return { ...base, state: 'not_over' };
  return { ...base, state: signatures.length > 0 ? 'changed' : 'unsigned' };
}

export const signaturesOf = (entries: readonly Entry[], day: string): EntryOf<'signature'>[] =>
  entries
    .filter((entry): entry is EntryOf<'signature'> => entry.kind === 'signature' && entry.body.day === day)
    .sort((a, b) => a.seq - b.seq);

/** Texts are numbered from 1 in the order in which they were first signed; a text not yet signed is the next one. */
export function revisionOf(signedHashes: readonly string[], hash: string): number {
  const texts = [...new Set(signedHashes)];
  const at = texts.indexOf(hash);
  return at >= 0 ? at + 1 : texts.length + 1;
}
