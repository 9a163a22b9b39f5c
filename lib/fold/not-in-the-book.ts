import type { Draft, Entry } from '#shared/entries/entry.ts';

/**
 * Drafts as entries that come after those of the book: so a phone without network folds what was written on it,
 * in the order in which it was written. They get their true places when the book takes them.
 */
export function withDrafts(entries: readonly Entry[], drafts: readonly Draft[], site: string): Entry[] {
  const known = new Set(entries.map(({ id }) => id));
  const last = entries.reduce((most, { seq }) => Math.max(most, seq), 0);
  const added = drafts
    .filter(({ id }) => !known.has(id))
    .map((draft, index): Entry => {
      const place = { site, seq: last + 1 + index, received_at: draft.entered_at, known: 'tap', device: '' };
      return { ...draft, ...place } as Entry;
    });
  return [...entries, ...added];
}
