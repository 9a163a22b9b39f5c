/** Noon of an invented day: minute 0 of every history. */
const noon = Date.parse('2026-05-08T17:00:00Z');

export const minuteOf = (at: number): number => (at - noon) / 60_000;

/** The instant of a minute, to the second. */
export const instant = (minute: number): number => noon + Math.round(minute * 60) * 1000;

/** Minutes of facts; an instant that nobody noted stays null. */
export const minuteOrNull = (at: number | null | undefined): number | null =>
  at === null || at === undefined ? null : minuteOf(at);
