import type { Book } from './book.ts';
import { nextActions } from './next-actions.ts';
import { roundDue } from './round-due.ts';
import { rowsNow } from './rows.ts';
import type { KitchenNow } from './views.ts';

/** The first screen: every place with what is in it, what is due and what to do next, worst first. */
export function kitchenNow(book: Book): KitchenNow {
  const round = roundDue(book);
  return {
    asOf: book.asOf,
    next: nextActions(book, round),
    rows: rowsNow(book),
    round,
    openDeviations: book.deviations.filter(({ state }) => state !== 'closed').length,
    undecided: book.deviations.filter(({ state }) => state === 'open').length,
  };
}
