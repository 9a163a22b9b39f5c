import { dayFrame } from '#lib/sheet/day-frame.ts';
import type { Entry } from '#shared/entries/entry.ts';
import type { Db } from './connect.ts';
import { loadEntries, loadKinds } from './load.ts';

/**
 * The entries that the sheet of one operating day is made from, whatever the length of the history.
 * @returns only the settings of the kitchen, or nothing, when no kitchen is set up
 */
export async function loadDay(db: Db, site: string, day: string): Promise<Entry[]> {
  const sites = await loadKinds(db, site, ['site']);
  const frame = dayFrame(sites, day);
  return frame ? loadEntries(db, site, { fromMs: frame.from, toMs: frame.to }) : sites;
}
