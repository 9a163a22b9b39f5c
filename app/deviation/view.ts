import { foodSaid, placeName } from '#app/batch/view.ts';
import { profileOf } from '#lib/fold/ask.ts';
import { mayRelease } from '#lib/fold/authority.ts';
import type { Batch, Book, Deviation, JudgedRun } from '#lib/fold/book.ts';
import type { Stage } from '#lib/judge/answer.ts';
import { line } from '#lib/judge/compare.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Decider } from './WhoDecides.tsx';

/** What the parts of a deviation page are drawn from. */
export type DeviationView = {
  book: Book;
  deviation: Deviation;
  batch: Batch | null;
  run: JudgedRun | null;
  zone: string;
  clock: '12' | '24';
  locale: 'en' | 'es';
  by: string; // '' = nobody writes now
  now: number;
};

export function deviationView(
  book: Book,
  deviation: Deviation,
  shown: Pick<DeviationView, 'locale' | 'by'>,
): DeviationView {
  const batch = deviation.batch === null ? null : (book.batches.get(deviation.batch) ?? null);
  return {
    book,
    deviation,
    batch,
    run: batch?.runs.find(({ key }) => key === deviation.run) ?? null,
    zone: book.kitchen.site?.zone ?? 'UTC',
    clock: book.kitchen.site?.clock ?? '24',
    now: book.asOf,
    ...shown,
  };
}

/** "BR-A, Brisket" or the name of the equipment or thermometer that it is about. */
export function aboutWhat({ book, deviation, batch, locale }: DeviationView): string {
  if (batch !== null)
    return [batch.name, foodSaid(batch.food, locale)].filter((word) => word !== '').join(', ');
  const probe = deviation.probe === null ? undefined : book.kitchen.probes.get(deviation.probe);
  return probe?.name ?? placeName(book, deviation.equipment) ?? '';
}

/** Minutes from the last good look to now (or to when it was put right); null = nobody knows. */
export const sinceLastGood = ({ deviation, now }: DeviationView): number | null =>
  deviation.lastGood === null ? null : minutesBetween(deviation.lastGood.at, deviation.untilAt ?? now);

/** People who may release blocked food here, but for the hand itself; those on call first. */
export function deciders(book: Book, hand: string): Decider[] {
  return [...book.kitchen.people.values()]
    .filter((person) => person.active && person.person !== hand && mayRelease(person.role, book.kitchen))
    .sort((a, b) => Number(b.on_call) - Number(a.on_call))
    .map((person) => deciderOf(book, person.person))
    .filter((person) => person !== null);
}

export function deciderOf(book: Book, id: string): Decider | null {
  const person = book.kitchen.people.get(id);
  if (person === undefined) return null;
  return {
    id: person.person,
    name: person.name,
    initials: person.initials,
    role: person.role,
    phone: person.phone,
    mayRelease: mayRelease(person.role, book.kitchen),
  };
}

/** Reheats of these pieces, before the finding and since. */
export function reheats({ batch, deviation }: DeviationView): { before: boolean; since: JudgedRun | null } {
  const concerned = (run: JudgedRun): boolean =>
    run.step === 'reheat' &&
    run.members.some(
      ({ piece }) => deviation.ends.some((end) => end.piece === piece) || deviation.pieces === null,
    );
  const runs = (batch?.runs ?? []).filter(concerned);
  return {
    before: runs.some(({ start, key }) => start < deviation.foundAt && key !== deviation.run),
    since: runs.findLast(({ start, key }) => start >= deviation.foundAt && key !== deviation.run) ?? null,
  };
}

/** What a conventional reheat has to reach, and within what time, by the profile in force; null = no figure. */
export function reheatFigures(book: Book): { limit: NonNullable<Stage['limit']>; withinMin: number } | null {
  const figures = profileOf(book)?.figures;
  const target = figures?.reheat_conventional?.target;
  const within = figures?.reheat_within;
  return target && within ? { limit: line(target).limit, withinMin: within.minutes } : null;
}
