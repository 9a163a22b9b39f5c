import type { Draft } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import { eventDraft } from './events.ts';
import { Mapping } from './mapping.ts';
import type { Night } from './night.ts';
import { setUpDrafts } from './set-up.ts';

export type DemoDrafts = {
  setUp: Draft[]; // the site first
  events: Draft[]; // in the order in which they were typed; a signature's hash is HASH_TO_COME
  /** Names of the demo file ("e0298", "BR-A", "p03", "cab2", "r-s-0100") → ids in the book. */
  ids: Map<string, string>;
};

/**
 * The demo night (night.json, all invented) as drafts of the ledger's own kinds: every event of it, ids mapped,
 * times moved by whole local days.
 * @param options.shiftDays whole local days, negative or positive; 0 leaves the night's own dates
 * @param options.newId makes one UUID v7 for an instant (ms)
 */
export function demoDrafts(
  night: Night,
  options: { shiftDays: number; newId: (ms: number) => string },
): DemoDrafts {
  const map = new Mapping(night, options.shiftDays, options.newId);
  // In the order of typing, as a ledger would have got them: a late entry comes late.
  const events = [...night.events].sort(
    (a, b) => msOf(a.entered_at) - msOf(b.entered_at) || a.id.localeCompare(b.id),
  );
  return {
    setUp: setUpDrafts(night, map),
    events: events.map((event) => eventDraft(event, map)),
    ids: map.ids,
  };
}
