import type { Entry } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import { aheadMin } from './admit.ts';
import type { Book } from './book.ts';
import { foldBook } from './fold-book.ts';

/**
 * The book as of `now` (ms). A phone's clock may be a little ahead: what it wrote is in the book and is seen, so
 * the moment of the fold moves up to the last entry, by no more than that.
 */
export function foldNow(entries: readonly Entry[], now: number): Book {
  const latest = entries.reduce((last, { at }) => Math.max(last, msOf(at)), now);
  return foldBook(entries, Math.min(latest, now + aheadMin * 60_000));
}
