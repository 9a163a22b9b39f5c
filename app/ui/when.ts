import { inZone, wallClock } from '#shared/time.ts';

type Weekday = '0' | '1' | '2' | '3' | '4' | '5' | '6';

/** The time on the wall, with its weekday where it is not today's: a bare time of yesterday would mislead. */
export function whenOf(
  site: { zone: string; clock: '12' | '24' },
  now: number,
  weekday: (day: Weekday) => string,
): (ms: number) => string {
  const dateOf = (ms: number): string => inZone(ms, site.zone).slice(0, 10);
  return (ms) => {
    const time = wallClock(ms, site.zone, site.clock);
    if (dateOf(ms) === dateOf(now)) return time;
    const day = String(new Date(`${dateOf(ms)}T12:00:00Z`).getUTCDay()) as Weekday;
    return `${weekday(day)} ${time}`;
  };
}
