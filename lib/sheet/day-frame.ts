import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { dayBounds, dayOf, msOf } from '#shared/time.ts';

/** The bounds of one operating day and the moment of judging. Instants in ms. */
export type DayFrame = {
  site: EntryOf<'site'>;
  day: string;
  from: number;
  to: number; // not of the day
  asOf: number;
  over: boolean;
};

/**
 * The kitchen's settings that were in force at the end of the day decide its bounds; a day from before the
 * kitchen was set up has the first settings.
 * @param knownUntil the moment of asking (ms); missing = the day is taken to be over
 * @returns null when no kitchen was ever set up
 */
export function dayFrame(entries: readonly Entry[], day: string, knownUntil?: number): DayFrame | null {
  const site = siteOfDay(siteEntries(entries), day);
  if (!site) return null;
  const { start, end } = dayBounds(day, site.body.day_starts, site.body.zone);
  const over = knownUntil === undefined || knownUntil >= end;
  return { site, day, from: start, to: end, asOf: over ? end : knownUntil, over };
}

/** The operating day that goes on at `now`, by the settings then in force; null without a kitchen. */
export function dayNow(entries: readonly Entry[], now: number): string | null {
  const sites = siteEntries(entries);
  const site = sites.filter((s) => msOf(s.at) <= now).at(-1) ?? sites[0];
  return site ? dayOf(now, site.body.day_starts, site.body.zone) : null;
}

function siteOfDay(sites: EntryOf<'site'>[], day: string): EntryOf<'site'> | undefined {
  const inForce = sites.filter((s) => msOf(s.at) < dayBounds(day, s.body.day_starts, s.body.zone).end);
  return inForce.at(-1) ?? sites[0];
}

const siteEntries = (entries: readonly Entry[]): EntryOf<'site'>[] =>
  entries
    .filter((entry): entry is EntryOf<'site'> => entry.kind === 'site')
    .sort((a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq);
