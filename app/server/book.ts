import 'server-only';
import { loadEntries } from '#db/load.ts';
import type { Book } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import { msOf } from '#shared/time.ts';
import { getDb } from './db.ts';

/** How far back kitchen screens look: a long hold of the night before and its day. Open batches come whole. */
const LOOK_BACK_MS = 48 * 3_600_000;

/** A phone's clock may be this far ahead of ours: what it wrote is in the book and must be seen. */
const AHEAD_MS = 5 * 60_000;

/**
 * The kitchen of this session as of now: what every screen but the signed day reads. `site` comes from the
 * session, never from an address. Cost does not grow with the length of the history (db/load.ts).
 */
export async function loadBook(session: { site: string }, asOf: number = Date.now()): Promise<Book> {
  const db = await getDb();
  const entries = await loadEntries(db, session.site, { fromMs: asOf - LOOK_BACK_MS, toMs: asOf + AHEAD_MS });
  const latest = entries.reduce((last, { at }) => Math.max(last, msOf(at)), asOf);
  return foldBook(entries, Math.min(latest, asOf + AHEAD_MS));
}
