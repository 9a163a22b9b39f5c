import { TZDate } from '@date-fns/tz';
import { addDays, format } from 'date-fns';
import * as z from 'zod';

/** An instant as it is written into an entry: ISO 8601 with an offset, to the second or finer. Never a local time. */
export const instant = z.iso.datetime({ offset: true });

/** A local calendar date, "2026-10-16". */
export const localDate = z.iso.date();

/** A time of day on the kitchen's wall, "04:00". */
export const timeOfDay = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);

/** Milliseconds since 1970-01-01T00:00Z of an instant in text. NaN never leaves: the schema has refused it before. */
export const msOf = (text: string): number => Date.parse(text);

/** The instant in UTC to the second when it falls on one, else to the millisecond: "2026-10-17T08:12:00Z". */
export const isoOf = (ms: number): string => new Date(ms).toISOString().replace('.000Z', 'Z');

/** Minutes from one instant (ms) to another (ms), unrounded; negative when the second is earlier. */
export const minutesBetween = (fromMs: number, toMs: number): number => (toMs - fromMs) / 60_000;

/** The instant with the offset that `zone` (IANA) had then: "2026-10-17T03:12:00-05:00". For entries and sheets. */
export const inZone = (ms: number, zone: string): string =>
  format(new TZDate(ms, zone), ms % 1000 === 0 ? "yyyy-MM-dd'T'HH:mm:ssXXX" : "yyyy-MM-dd'T'HH:mm:ss.SSSXXX");

/** The clock on the kitchen's wall at `ms`: "03:12", or "3:12 am" where the site has a 12 hour clock. */
export const wallClock = (ms: number, zone: string, clock: '12' | '24' = '24'): string =>
  format(new TZDate(ms, zone), clock === '24' ? 'HH:mm' : 'h:mm aaa');

/**
 * First and last instant (ms; the end is the next day's start and not of the day) of the operating day that is
 * named by the local date `day`. The day begins at `dayStarts` on the wall, so nights on which clocks change
 * give days of 23 and 25 hours. A start that the clock skips is read with the offset before the gap, as RFC 5545
 * (3.3.5) reads any local time that does not occur: 02:30 is then 03:30.
 */
export function dayBounds(day: string, dayStarts: string, zone: string): { start: number; end: number } {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const [hour = 0, minute = 0] = dayStarts.split(':').map(Number);
  const start = new TZDate(year, month - 1, date, hour, minute, zone);
  const next = addDays(new TZDate(year, month - 1, date, 12, 0, zone), 1);
  const end = new TZDate(next.getFullYear(), next.getMonth(), next.getDate(), hour, minute, zone);
  return { start: start.getTime(), end: end.getTime() };
}

/** The operating day ("2026-10-16") to which the instant `ms` belongs. */
export function dayOf(ms: number, dayStarts: string, zone: string): string {
  const local = format(new TZDate(ms, zone), 'yyyy-MM-dd');
  if (ms >= dayBounds(local, dayStarts, zone).start) return local;
  return format(addDays(new TZDate(ms, zone), -1), 'yyyy-MM-dd');
}
