import type { Body, DraftOf } from '#shared/entries/entry.ts';

/** Who writes, when and under which fresh id. `now` is the device's clock (ms). */
export type Pen = { now: number; by: string; id: () => string };

/** The instant in UTC, to the second. (shared/time.ts brings a schema library with it; this screen has none.) */
export const iso = (ms: number): string =>
  new Date(Math.floor(ms / 1000) * 1000).toISOString().replace('.000Z', 'Z');

/** A reading of the moment `at` (ms). Tests parse every draft made here with the schema of its kind. */
export const readingDraft = (pen: Pen, at: number, body: Body<'reading'>): DraftOf<'reading'> => ({
  ...envelope(pen, at),
  kind: 'reading',
  body,
});

/** The round as it stands: a later entry with the same `round` replaces the earlier. `at` is always its start. */
export const roundDraft = (pen: Pen, startedAt: number, body: Body<'round'>): DraftOf<'round'> => ({
  ...envelope(pen, startedAt),
  kind: 'round',
  body,
});

export const noteDraft = (pen: Pen, body: Body<'note'>): DraftOf<'note'> => ({
  ...envelope(pen, pen.now),
  kind: 'note',
  body,
});

/** Takes an entry back: it stays readable, struck. */
export const struckDraft = (pen: Pen, target: string, reason: string): DraftOf<'amendment'> => ({
  ...envelope(pen, pen.now),
  kind: 'amendment',
  body: { target, field: 'struck', from: 'false', to: 'true', reason },
});

const envelope = (pen: Pen, at: number) => ({
  id: pen.id(),
  version: 1,
  at: iso(at),
  entered_at: iso(pen.now),
  by: pen.by,
});
