import type { BatchView } from '#app/batch/view.ts';
import { inZone, wallClock } from '#shared/time.ts';
import { converted, degrees, type Unit } from '#shared/units.ts';

/** A message of this room by a key that is put together, with its values. */
export type Say = (key: string, values?: Record<string, string | number>) => string;

export type Site = Pick<BatchView, 'zone' | 'clock' | 'locale'> & { unit: Unit; now: number };

export const siteOf = (view: BatchView): Site => ({
  zone: view.zone,
  clock: view.clock,
  locale: view.locale,
  unit: view.book.kitchen.site?.unit ?? 'degF',
  now: view.book.asOf,
});

/** °F as the kitchen reads temperatures, one decimal where there is any. */
export const shownF = (value: number, unit: Unit): number =>
  Number(converted(value, 'degF', unit).toFixed(1));
export const degreesF = (value: number, unit: Unit): string => `${shownF(value, unit)} ${degrees(unit)}`;
/** A difference in °F. */
export const widthF = (value: number, unit: Unit): string =>
  `± ${Number((unit === 'degF' ? value : value / 1.8).toFixed(1))} ${degrees(unit)}`;

const minute = 60_000;

/** The time on the wall, with the date where it is not today's. `up` rounds to the later minute, else the earlier. */
export function timeAt(ms: number, site: Site, round: 'down' | 'up' = 'down'): string {
  const whole = (round === 'up' ? Math.ceil(ms / minute) : Math.floor(ms / minute)) * minute;
  const time = wallClock(whole, site.zone, site.clock);
  if (inZone(whole, site.zone).slice(0, 10) === inZone(site.now, site.zone).slice(0, 10)) return time;
  const day = new Intl.DateTimeFormat(site.locale, { timeZone: site.zone, day: 'numeric', month: 'short' });
  return `${time}, ${day.format(whole)}`;
}

/** Digits that a person can check again, not more. */
export const rough = (value: number, digits = 3): string => String(Number(value.toPrecision(digits)));
