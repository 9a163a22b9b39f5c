import { Temporal } from 'temporal-polyfill';

/**
 * Elapsed time and local days from the zone data of the runtime (IANA). A length is a difference of instants, never
 * of wall clocks. Class S. Rules of future years may change: keep the runtime's zone data fresh.
 */
const HOUR_MS = 3_600_000;
const localText = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,3})?)?$/;
const dateText = /^\d{4}-\d\d-\d\d$/;

/** What `make` answers; null when text is no time, or the zone is not known: the library throws then. */
function orNull<T>(make: () => T): T | null {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** A bare offset is no zone: it knows no summer. */
const isZoneName = (zone: string): boolean => /^[A-Za-z]/.test(zone);

/**
 * The instants (ms since 1970) at which a clock on the wall of `zone` showed `local` ("2026-11-01T01:30"): none in
 * the gap of spring, two in the doubled hour of autumn, the earlier first. Null when zone or text is not understood.
 */
export function instantsOf(zone: string, local: string): number[] | null {
  if (!isZoneName(zone) || !localText.test(local)) return null;
  return orNull(() => {
    const wall = Temporal.PlainDateTime.from(local);
    const found = (['earlier', 'later'] as const)
      .map((disambiguation) => wall.toZonedDateTime(zone, { disambiguation }))
      .filter((zoned) => zoned.toPlainDateTime().equals(wall))
      .map(({ epochMilliseconds }) => epochMilliseconds);
    return [...new Set(found)];
  });
}

/** Whether the wall clock ever showed `local`. A form then refuses or asks; it never shifts silently. Null as above. */
export const exists = (zone: string, local: string): boolean | null => {
  const found = instantsOf(zone, local);
  return found === null ? null : found.length > 0;
};

export type LocalTime = {
  local: string;
  /** 0 the first, 1 the second of a doubled hour. */
  fold: number;
};

export type Elapsed = {
  startMs: number;
  endMs: number;
  /** Difference of the instants. Negative when the end is the earlier: warn. */
  hours: number;
  /** Difference of the wall times: the wrong answer, here so that a test can show that it is not used. */
  wallClockHours: number;
};

const chosen = (found: readonly number[] | null, fold: number): number | undefined =>
  found === null ? undefined : (found[fold] ?? found[0]);

/** Hours between two local times of a zone. Null when zone or text is not understood, or a time does not exist. */
export function elapsedLocal(zone: string, start: LocalTime, end: LocalTime): Elapsed | null {
  const startMs = chosen(instantsOf(zone, start.local), start.fold);
  const endMs = chosen(instantsOf(zone, end.local), end.fold);
  if (startMs === undefined || endMs === undefined) return null;
  const wall = (local: string): number => Date.parse(`${local}Z`);
  return {
    startMs,
    endMs,
    hours: (endMs - startMs) / HOUR_MS,
    wallClockHours: (wall(end.local) - wall(start.local)) / HOUR_MS,
  };
}

/**
 * First instant of a local date, of the next, and the hours between (23, 23.5, 24, 24.5, 25 …). Where midnight does
 * not exist the day starts at its first instant. Null when zone or text is not understood.
 */
export function localDay(
  zone: string,
  date: string,
): { startMs: number; endMs: number; hours: number } | null {
  if (!isZoneName(zone) || !dateText.test(date)) return null;
  return orNull(() => {
    const day = Temporal.PlainDate.from(date);
    const startMs = day.toZonedDateTime(zone).epochMilliseconds;
    const endMs = day.add({ days: 1 }).toZonedDateTime(zone).epochMilliseconds;
    return { startMs, endMs, hours: (endMs - startMs) / HOUR_MS };
  });
}
