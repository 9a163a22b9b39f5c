import { profileOf, stagesOf } from '#lib/fold/ask.ts';
import type { Batch, Book, JudgedRun } from '#lib/fold/book.ts';
import { type Side, sideOf } from '#lib/fold/good.ts';
import type { Body } from '#shared/entries/entry.ts';

/** What the parts of a batch page are drawn from. */
export type BatchView = {
  book: Book;
  batch: Batch;
  zone: string;
  clock: '12' | '24';
  locale: 'en' | 'es';
  by: string; // '' = nobody writes now
};

export function foodSaid(food: Body<'food'> | null, locale: 'en' | 'es'): string {
  return (locale === 'es' ? food?.name_es : null) ?? food?.name ?? '';
}

export const placeName = (book: Book, equipment: string | null): string | null =>
  equipment === null ? null : (book.kitchen.equipment.get(equipment)?.name ?? null);

/** Where each food reading of a batch stands against the figure of its step, by entry id. */
export function sides(book: Book, runs: readonly JudgedRun[]): Map<string, Side> {
  const profile = profileOf(book);
  if (profile === null) return new Map();
  return new Map(
    runs.flatMap((run) =>
      run.looks.map((look): [string, Side] => [
        look.id,
        sideOf(look, run.step, stagesOf(run, look.piece), profile),
      ]),
    ),
  );
}

/** The run that the page shows first: the one asked for, else the one that goes on, else the last. */
export function shownRun(batch: Batch, asked: string | undefined): JudgedRun | null {
  const named = batch.runs.find((run) => run.key === asked);
  if (named) return named;
  const present = batch.runs.filter((run) => run.end === null);
  return worstRun(present) ?? batch.runs.at(-1) ?? null;
}

const worstRun = (runs: readonly JudgedRun[]): JudgedRun | undefined =>
  runs.find((run) => Object.values(run.stages).some((stage) => stage.verdict === 'broken')) ?? runs.at(-1);
