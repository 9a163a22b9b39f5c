import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { kMax } from '#lib/science/bounds.ts';
import { assumed, metresPerInch } from './assumed.ts';

/**
 * Full sides in m of the smallest piece of a run, as a hand wrote them with the step (inches): thickness, width,
 * length. A side that nobody wrote is taken as small as the smallest that is known, so the bound stays a bound.
 */
export function sidesOf(
  book: Pick<Book, 'batches'>,
  run: Pick<JudgedRun, 'details' | 'batch'>,
): number[] | null {
  const sides = run.details.piece_in ?? earlier(book, run.batch);
  if (sides === undefined || sides.length === 0) return null;
  const least = Math.min(...sides);
  return [0, 1, 2].map((place) => (sides[place] ?? least) * metresPerInch);
}

/** The fastest fall of that piece's core, 1/h; null: its size is not known. Class S. */
export function fastestFall(
  book: Pick<Book, 'batches'>,
  run: Pick<JudgedRun, 'details' | 'batch'>,
): number | null {
  const sides = sidesOf(book, run);
  return sides === null ? null : kMax(sides, assumed.mostAlpha);
}

/** Written with another step of the same pieces: cut pieces are another batch. */
const earlier = (book: Pick<Book, 'batches'>, batch: string): number[] | undefined =>
  book.batches.get(batch)?.runs.findLast(({ details }) => details.piece_in !== undefined)?.details.piece_in;
