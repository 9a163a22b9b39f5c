import type { Batch, Book, Deviation } from '#lib/fold/book.ts';
import { dueOf } from '#lib/fold/due.ts';
import { dayDueOf } from '#lib/fold/use-by.ts';
import type { Action } from '#lib/judge/answer.ts';
import { watchPulled } from './watch-pulled.ts';

/** What to do next with a batch: a message key under `batch.todo`, and where it is done. */
export type NextItem = {
  key: Action | 'decide' | 'new_watch' | 'use_today' | 'past_its_day';
  by: number | null;
  href: string;
};

/** Worst first: what is undecided, then the rules' deadlines, then the plan. */
export function nextItems(book: Book, batch: Batch): NextItem[] {
  const read = `/round?batch=${batch.id}&only=1`;
  const undecided = book.deviations
    .filter((each) => each.state === 'open' && concerns(each, batch))
    .sort((a, b) => a.foundAt - b.foundAt)
    .map(
      (each): NextItem => ({
        key: 'decide',
        by: decideBy(book, each.foundAt),
        href: `/deviation/${encodeURIComponent(each.ref)}`,
      }),
    );
  const present = batch.runs.filter((run) => run.end === null);
  const dues = present.map((run) => dueOf(book, run));
  const deadlines = dues.flatMap(({ deadline }): NextItem[] =>
    deadline === null ? [] : [{ key: deadline.action, by: deadline.at, href: read }],
  );
  const looks = dues.flatMap(({ dueAt }) => dueAt ?? []);
  const byPlan: NextItem[] =
    looks.length === 0 ? [] : [{ key: 'look_by_plan', by: Math.min(...looks), href: read }];
  const watch: NextItem[] = present.some(watchPulled) ? [{ key: 'new_watch', by: null, href: read }] : [];
  const use = present.flatMap((run): NextItem[] => {
    const useBy = dayDueOf(book, run);
    if (useBy === null || run.stages.date_mark?.verdict === 'broken') return [];
    const key = useBy.state === 'today' ? 'use_today' : 'past_its_day';
    return [{ key, by: null, href: `/batch/${batch.id}/next?to=gone` }];
  });
  return [...undecided, ...byTime(deadlines), ...use, ...watch, ...byPlan];
}

/** Its own, or of food that it was made of and that has no end here yet. */
const concerns = (each: Deviation, batch: Batch): boolean =>
  each.batch === batch.id || each.ends.some((end) => end.batch === batch.id && end.end === null);

const decideBy = (book: Book, foundAt: number): number | null => {
  const within = book.kitchen.site?.house.decide_within_min ?? null;
  return within === null ? null : foundAt + within * 60_000;
};

const byTime = (items: NextItem[]): NextItem[] => items.sort((a, b) => (a.by ?? 0) - (b.by ?? 0));
