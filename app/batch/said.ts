import { wallClock } from '#shared/time.ts';
import { degrees, type Unit } from '#shared/units.ts';

/** A message by a key that is put together here, with its values. */
export type Say = (key: string, values?: Record<string, string | number>) => string;

const minutesInHour = 60;

/**
 * A length in words ("3 h 08 min"), rounded down to whole minutes: what is left and what was kept is never said
 * longer than it was. `up` rounds up, for what was out of its limit.
 */
export function length(say: Say, minutes: number, round: 'down' | 'up' = 'down'): string {
  const whole = round === 'up' ? Math.ceil(minutes) : Math.floor(minutes);
  const h = Math.floor(whole / minutesInHour);
  const m = whole % minutesInHour;
  if (h === 0) return say('minutes', { m });
  if (m === 0) return say('hours', { h });
  return say('hours_minutes', { h, m: String(m).padStart(2, '0') });
}

/** "135 °F": a limit or a difference. Decimals only where there are any. */
export const temperature = (value: number, unit: Unit): string =>
  `${Number(value.toFixed(1))} ${degrees(unit)}`;

/** Clock times of this kitchen; with the local day where it is not the day of `now`. */
export function timeSaid(
  ms: number,
  at: { zone: string; clock: '12' | '24'; locale: string; now: number },
): string {
  const time = wallClock(ms, at.zone, at.clock);
  const day = (instant: number) =>
    new Intl.DateTimeFormat(at.locale, { timeZone: at.zone, day: 'numeric', month: 'short' }).format(instant);
  return day(ms) === day(at.now) ? time : `${time}, ${day(ms)}`;
}

/** "22 Oct": a calendar day, in the words of the screen. */
export const dayWords = (day: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { timeZone: 'UTC', day: 'numeric', month: 'short' }).format(
    Date.parse(`${day}T00:00:00Z`),
  );
