import { dayBounds, dayOf } from '#shared/time.ts';

const midnight = '00:00';
/** Every offset from UTC is a whole number of quarter hours, so no quarter hour lies in two local days. */
const quarterMs = 15 * 60_000;

/** Calendar days on the kitchen's wall, from midnight to midnight. A day is "2026-10-16"; instants are ms. */
export class LocalDays {
  private readonly zone: string;
  private readonly known = new Map<number, string>();

  constructor(zone: string) {
    this.zone = zone;
  }

  of(ms: number): string {
    const quarter = Math.floor(ms / quarterMs);
    const known = this.known.get(quarter);
    if (known !== undefined) return known;
    const day = dayOf(ms, midnight, this.zone);
    this.known.set(quarter, day);
    return day;
  }

  /** The first instant of a day; of a day that the clock skips at midnight, the first after the gap. */
  start(day: string): number {
    return dayBounds(day, midnight, this.zone).start;
  }
}

/** The day after a calendar day. */
export const dayAfter = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
