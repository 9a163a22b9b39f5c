/** The kitchen's wall clock on the phone, by the browser's own calendar: this screen loads no library for it. */

/** "03:12", or "3:12 am" where the site has a 12 hour clock. */
export function wallTime(ms: number, zone: string, clock: '12' | '24'): string {
  const { hour, minute } = wallParts(ms, zone);
  const mm = String(minute).padStart(2, '0');
  if (clock === '24') return `${String(hour).padStart(2, '0')}:${mm}`;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${mm} ${hour < 12 ? 'am' : 'pm'}`;
}

function wallParts(ms: number, zone: string): { hour: number; minute: number } {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(ms);
  const of = (type: string): number => Number(parts.find((p) => p.type === type)?.value ?? 0);
  return { hour: of('hour'), minute: of('minute') };
}

const dayMin = 24 * 60;

/**
 * The last moment at or before `now` at which the kitchen's wall showed the typed time, to the minute. "215" and
 * "0215" are 2:15; on a 12 hour clock they are the nearer of 2:15 am and pm. null = no time of day.
 */
export function lastTimeOf(typed: string, now: number, zone: string, clock: '12' | '24'): number | null {
  if (!/^\d{3,4}$/.test(typed)) return null;
  const hour = Number(typed.slice(0, -2));
  const minute = Number(typed.slice(-2));
  if (hour > 23 || minute > 59) return null;
  const cycle = clock === '12' && hour <= 12 && !typed.startsWith('0') ? dayMin / 2 : dayMin;
  const minutesOf = (ms: number): number => {
    const wall = wallParts(ms, zone);
    return wall.hour * 60 + wall.minute;
  };
  const back = (from: number): number => {
    const ago = (minutesOf(from) - (hour * 60 + minute)) % cycle;
    return ago < 0 ? ago + cycle : ago;
  };
  const toMinute = now - (now % 60_000);
  const guess = toMinute - back(toMinute) * 60_000;
  // On the night on which clocks change the guess is an hour off: the wall's own time at the guess says which way.
  const off = back(guess) > cycle / 2 ? back(guess) - cycle : back(guess);
  const at = guess - off * 60_000;
  return at > now ? at - cycle * 60_000 : at;
}
