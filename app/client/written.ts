import type { Body, Draft, Kind } from '#shared/entries/entry.ts';
import { draft } from './post-entries.ts';

/** What a choice on a screen writes into the book, before it has an id, a time and a hand. */
export type Written = { [K in Kind]: { kind: K; body: Body<K> } }[Kind];

/** The drafts of what was chosen, all of one hand and one moment (ISO; now unless said). */
export const draftsOf = (written: readonly Written[], hand: { by: string; at?: string }): Draft[] =>
  written.map(({ kind, body }) => draft(kind, body, hand) as Draft);
