import { type CoolingOutlook, coolingOutlook } from '#lib/between/cooling.ts';
import type { Book, JudgedRun } from '#lib/fold/book.ts';

const known = new WeakMap<JudgedRun, CoolingOutlook | null>();

/** The outlook of a run, worked out once for all parts of a page: a run belongs to one book. */
export function outlookOf(book: Book, run: JudgedRun): CoolingOutlook | null {
  const found = known.get(run);
  if (found !== undefined) return found;
  const made = coolingOutlook(book, run);
  known.set(run, made);
  return made;
}
