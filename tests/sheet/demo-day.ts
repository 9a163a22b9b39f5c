import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import type { CanonicalDay } from '#lib/sheet/day-schema.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { demoEntries, saturday } from '../fold/demo-book.ts';

export const friday = '2026-10-16';
export const saturdayDay = '2026-10-17';

export function dayOfDemo(day: string, entries: readonly Entry[] = demoEntries): CanonicalDay {
  const made = canonicalDay(entries, day, day === saturdayDay ? { knownUntil: saturday } : {});
  if (!made) throw new Error(`no day ${day}`);
  return made;
}

export const readingsOf = (day: CanonicalDay) => [
  ...day.batches.flatMap((batch) => batch.readings),
  ...day.air,
  ...day.loose,
];
