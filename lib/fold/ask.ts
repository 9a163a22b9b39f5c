import type { Stages } from '#lib/judge/answer.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Book, Deviation, JudgedRun, Member } from './book.ts';

/** The limits profile by which the book is judged; null when the kitchen names one that is not known. */
export const profileOf = (book: Pick<Book, 'limits'>): Profile | null => book.limits.profile;

/** The stages of one piece of the run; of the group where that piece was not judged. */
export const stagesOf = (run: Pick<JudgedRun, 'byPiece' | 'stages'>, piece: number | null): Stages =>
  run.byPiece.find((one) => one.piece === piece)?.stages ?? run.stages;

/** Those who are in the run now. */
export const presentIn = (run: JudgedRun): Member[] => run.members.filter(({ until }) => until === null);

/** Numbers of the pieces that are in the run now; null = not counted. */
export function presentPieces(run: JudgedRun): number[] | null {
  const numbers = presentIn(run)
    .map(({ piece }) => piece)
    .filter((piece) => piece !== null);
  return numbers.length === 0 ? null : numbers;
}

/** Runs in which food is now, in order of their start. */
export const runsNow = (book: Book): JudgedRun[] =>
  [...book.batches.values()]
    .flatMap(({ runs }) => runs)
    .filter((run) => run.end === null)
    .sort((a, b) => a.start - b.start);

/** Pieces of the run that are there now and must not be served. */
export function blockedIn(book: Book, run: JudgedRun): (number | null)[] {
  const here = new Set(presentIn(run).map(({ piece }) => piece));
  const pieces = book.batches.get(run.batch)?.pieces ?? [];
  return pieces
    .filter(({ number, standing }) => here.has(number) && standing === 'do_not_serve')
    .map(({ number }) => number);
}

/** A deviation by its ref, or by the key of what the judge opened about the same food. */
export const deviationBy = (book: Pick<Book, 'deviations'>, ref: string): Deviation | undefined =>
  book.deviations.find((deviation) => deviation.ref === ref || deviation.aliases.includes(ref));

/** The initials that stand beside a figure; "?" for a hand that the kitchen does not know. */
export const initialsOf = (book: Pick<Book, 'kitchen'>, person: string): string =>
  book.kitchen.people.get(person)?.initials ?? '?';
