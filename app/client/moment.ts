import { TZDate } from '@date-fns/tz';
import { subDays } from 'date-fns';

/** When it happened, as it is tapped: minutes ago, or a time read off the kitchen's clock. */
export type MomentChoice = { minutesAgo: number } | { clock: string };

/**
 * The instant (ms) that a choice means. A time off the clock is the last one that is not in the future: "23:40"
 * tapped at 00:20 was yesterday.
 *
 * @param zone IANA zone of the kitchen
 * @returns null when what was typed is no time of day
 */
export function momentOf(choice: MomentChoice, nowMs: number, zone: string): number | null {
  if ('minutesAgo' in choice) return nowMs - choice.minutesAgo * 60_000;
  const time = timeOfDay(choice.clock);
  if (time === null) return null;
  const today = new TZDate(nowMs, zone);
  const at = onDay(today, time, zone);
  return at <= nowMs ? at : onDay(subDays(today, 1), time, zone);
}

type TimeOfDay = { hour: number; minute: number };

function onDay(day: Date, { hour, minute }: TimeOfDay, zone: string): number {
  return new TZDate(day.getFullYear(), day.getMonth(), day.getDate(), hour, minute, zone).getTime();
}

/** "3:05", "03:05", "3.05", "305", "3:05 pm" and "3:05p" are all how a cook writes a time. */
function timeOfDay(text: string): TimeOfDay | null {
  const parts = /^\s*(\d{1,2})[:.h ]?(\d{2})\s*(?:([ap])\.?\s*(?:m\.?)?)?\s*$/i.exec(text);
  if (parts === null) return null;
  const [, hours = '', minutes = '', half] = parts;
  const minute = Number(minutes);
  const hour = hourOf(Number(hours), half?.toLowerCase());
  return hour === null || minute > 59 ? null : { hour, minute };
}

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half === 'p' ? 12 : 0);
}
