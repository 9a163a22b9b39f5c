import type { Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Reason, Verdict } from './answer.ts';

/** Classes that come raw, or may: not ready to eat until they were cooked. */
export const comesRaw: ReadonlySet<FoodClass> = new Set([
  'intact_roast',
  'injected_or_tenderized',
  'ground',
  'sausage_raw',
  'poultry',
  'pork_whole',
  'beef_whole',
  'fish',
  'egg',
  'unknown',
]);

/** What is known of a marked food. All dates are local calendar dates, "2026-10-16". */
export type DateMarked = {
  prepared_on?: string | null | undefined;
  opened_on?: string | null | undefined;
  /** From the day it went into the freezer to the day it came out; a second null = it is still there. */
  frozen?: readonly (readonly [string, string | null])[] | null | undefined;
  combined_with?: readonly string[] | null | undefined;
  as_of_date: string;
};

export type DateVerdict = {
  verdict: Verdict;
  last_day: string | null; // null = still frozen, or not known from when
  section: string;
  reasons: Reason[];
};

const dayMs = 86_400_000;
const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / dayMs;
const dateOf = (day: number): string => new Date(day * dayMs).toISOString().slice(0, 10);

/** Days that do not count, from the first to before the last; an end of Infinity = it is still frozen. */
type Stopped = { from: number; before: number };

/** The day on which the count ends; Infinity while it stands still. One walk over the stops, in order of time. */
function lastDay(first: number, days: number, stops: readonly Stopped[]): number {
  let day = first; // the next day to count
  let left = days;
  for (const { from, before } of [...stops].sort((a, b) => a.from - b.from)) {
    if (before <= day || before <= from) continue;
    const counted = Math.max(0, Math.min(left, from - day));
    left -= counted;
    if (left === 0) return day + counted - 1;
    day = before;
  }
  return day + left - 1;
}

/** What a date mark is counted from: day 1 is no earlier and no later than these; null = not known on that side. */
export type MarkedFrom = {
  earliest: string | null;
  latest: string | null;
  /** From the day it went into the freezer to the day it came out; null = it is still there. */
  frozen: readonly (readonly [string, string | null])[];
  /** Why the rule does not speak of it: raw, or in its sealed package; null = it does. */
  outside: 'raw' | 'sealed' | null;
};

/** Which day of the mark a date is, the first one being day 1 and days between in and out of a freezer not counted. */
export function dayOfMark(first: string, date: string, frozen: MarkedFrom['frozen']): number {
  const today = dayOf(date);
  let from = dayOf(first);
  let count = 0;
  const stops = frozen.map(
    ([into, out]) => [dayOf(into) + 1, out === null ? today + 1 : dayOf(out)] as const,
  );
  for (const [stop, goesOn] of stops.sort((a, b) => a[0] - b[0])) {
    const until = Math.min(stop, today + 1);
    if (goesOn <= from || until >= goesOn) continue;
    count += Math.max(0, until - from);
    from = Math.max(from, goesOn);
  }
  return count + Math.max(0, today + 1 - from);
}

/**
 * The date mark, FDA Food Code 2022 3-501.17 and .18 by docs/judge.md 4.7: the day of preparation or opening is
 * day 1 and combined food takes the earliest date. Days frozen do not count; the day it goes in and the day it
 * comes out do. A worked example of the model code leaves the day it goes in out: on the days that only that count
 * still allows the answer is not shown, for the rule is contested there.
 */
export function dateMark(marked: DateMarked, { figures }: Profile): DateVerdict {
  const rule = figures.date_mark;
  const section = rule?.days.section ?? '';
  if (rule === null) return { verdict: 'not_applicable', last_day: null, section, reasons: ['no_figure'] };
  const dates = [marked.prepared_on, marked.opened_on, ...(marked.combined_with ?? [])];
  const starts = dates.flatMap((date) => (date === null || date === undefined ? [] : [dayOf(date)]));
  if (starts.length === 0)
    return { verdict: 'not_shown', last_day: null, section, reasons: ['start_unknown'] };
  const first = Math.min(...starts);
  const frozen = (marked.frozen ?? []).map(([from, to]) => ({
    from: dayOf(from),
    before: to === null ? Number.POSITIVE_INFINITY : dayOf(to),
  }));
  const stricter = frozen.map(({ from, before }) => ({ from: from + 1, before }));
  const thawed = stricter.filter(({ before }) => Number.isFinite(before));
  const due = lastDay(first, rule.days.days, thawed);
  // Still in the freezer, and put there in time: the clock stands, and no day is the last one yet.
  const isStopped = frozen.some(({ from, before }) => before === Number.POSITIVE_INFINITY && from <= due);
  const last = isStopped ? Number.POSITIVE_INFINITY : due;
  const friendlier = lastDay(first, rule.days.days, frozen);
  const today = dayOf(marked.as_of_date);
  const told = { last_day: Number.isFinite(last) ? dateOf(last) : null, section };
  if (today <= last) return { ...told, verdict: 'kept', reasons: [] };
  if (today <= friendlier) return { ...told, verdict: 'not_shown', reasons: ['disputed'] };
  return { ...told, verdict: 'broken', reasons: [] };
}
