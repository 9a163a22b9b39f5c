import type { ReadingDoc } from './day-schema.ts';
import { type DayScope, inDay, readingDocOf } from './day-scope.ts';

/**
 * Readings of the day that no batch and no equipment took up (a batch nobody knows, a piece that was gone): they are
 * printed too, so that no reading of the day is missing from its sheet. What its hand took back stands among the
 * corrections.
 */
export const looseDocs = (scope: DayScope, placed: ReadonlySet<string>): ReadingDoc[] =>
  [...scope.book.looks.values()]
    .filter((look) => inDay(scope, look.at) && !placed.has(look.id))
    .sort((a, b) => a.at - b.at || a.seq - b.seq)
    .map((look) => readingDocOf(scope, look, null));
