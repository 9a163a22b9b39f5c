import 'server-only';
import { loadEntries } from '#db/load.ts';
import { aheadMin } from '#lib/fold/admit.ts';
import type { Book } from '#lib/fold/book.ts';
import { foldNow } from '#lib/fold/fold-now.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { getDb } from './db.ts';

/** How far back kitchen screens look: a long hold of the night before and its day. Open batches come whole. */
const LOOK_BACK_MS = 48 * 3_600_000;

const AHEAD_MS = aheadMin * 60_000;

/**
 * The kitchen of this session as of now: what every screen but the signed day reads. `site` comes from the
 * session, never from an address. Cost does not grow with the length of the history (db/load.ts).
 */
export async function loadBook(session: { site: string }, asOf: number = Date.now()): Promise<Book> {
  const entries = await loadForPhone(session, asOf);
  return foldNow(entries, asOf);
}

/** The same, further back: for a page that charts the past of one thing. Its cost grows with the days asked for. */
export async function loadBookSince(session: { site: string }, days: number): Promise<Book> {
  const asOf = Date.now();
  const window = { fromMs: asOf - days * 24 * 3_600_000, toMs: asOf + AHEAD_MS };
  return foldNow(await loadEntries(await getDb(), session.site, window), asOf);
}

/** The entries from which kitchen now is folded: the same on the server and on a phone without network. */
export async function loadForPhone(session: { site: string }, asOf: number = Date.now()): Promise<Entry[]> {
  return loadEntries(await getDb(), session.site, { fromMs: asOf - LOOK_BACK_MS, toMs: asOf + AHEAD_MS });
}
