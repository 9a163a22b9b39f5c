import type { Book, JudgedRun } from './book.ts';
import { LocalDays } from './local-days.ts';

/** Cold food whose last day is today, or is past: what the date mark asks for now. null = it asks nothing today. */
export type UseBy = { lastDay: string; state: 'today' | 'past'; section: string };

export function dayDueOf(book: Book, run: JudgedRun): UseBy | null {
  const mark = run.stages.date_mark;
  if (run.end !== null || mark === undefined || mark.last_day === null || mark.last_day === undefined)
    return null;
  const today = new LocalDays(book.kitchen.site?.zone ?? 'UTC').of(book.asOf);
  if (mark.last_day > today) return null;
  const state = mark.last_day === today ? 'today' : 'past';
  return { lastDay: mark.last_day, state, section: mark.section };
}
