import { elapsedLocal, exists, localDay } from '#lib/science/local-time.ts';
import { isoOf } from '#shared/time.ts';
import { type Kind, kind, named } from './kind.ts';

/** Elapsed time and local days (file 11). */
export const clocks: Record<string, Kind> = {
  elapsed_local: kind('start_utc end_utc elapsed_h wall_clock_difference_h', ({ text, maybe }) =>
    named(
      elapsedLocal(
        text('zone'),
        { local: text('start'), fold: maybe('start_fold') ?? 0 },
        { local: text('end'), fold: maybe('end_fold') ?? 0 },
      ),
      ({ startMs, endMs, hours, wallClockHours }) => ({
        start_utc: isoOf(startMs),
        end_utc: isoOf(endMs),
        elapsed_h: hours,
        wall_clock_difference_h: wallClockHours,
      }),
    ),
  ),
  local_day: kind('start_utc end_utc hours', ({ text }) =>
    named(localDay(text('zone'), text('date')), ({ startMs, endMs, hours }) => ({
      start_utc: isoOf(startMs),
      end_utc: isoOf(endMs),
      hours,
    })),
  ),
  nonexistent_local: kind('exists', ({ text }) => ({ exists: exists(text('zone'), text('local')) })),
};
