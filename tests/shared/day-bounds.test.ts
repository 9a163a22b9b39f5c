import { describe, expect, test } from 'vitest';
import { dayBounds, dayOf } from '#shared/time.ts';

/**
 * Clocks in Chicago went forward on 8 March 2026 at 02:00 (08:00 UTC) and back on 1 November 2026 at 02:00 (07:00
 * UTC): 15 U.S.C. 260a, second Sunday of March and first Sunday of November; offsets from the IANA time zone database.
 * A local time that does not occur is read with the offset before the gap: RFC 5545, 3.3.5 (from memory).
 */
const chicago = 'America/Chicago';
const utc = (text: string): number => Date.parse(text);

describe('the operating day is bounded by the clock on the kitchen’s wall (demand:15)', () => {
  test.each([
    ['an ordinary day', '2026-10-16', '04:00', '2026-10-16T09:00Z', '2026-10-17T09:00Z', 24],
    [
      'the night on which clocks go forward',
      '2026-03-07',
      '04:00',
      '2026-03-07T10:00Z',
      '2026-03-08T09:00Z',
      23,
    ],
    [
      'the night on which clocks go back',
      '2026-10-31',
      '04:00',
      '2026-10-31T09:00Z',
      '2026-11-01T10:00Z',
      25,
    ],
    ['a start that the clock skips', '2026-03-08', '02:30', '2026-03-08T08:30Z', '2026-03-09T07:30Z', 23],
  ])('%s', (_, day, starts, from, to, hours) => {
    const { start, end } = dayBounds(day, starts, chicago);
    expect([start, end]).toEqual([utc(from), utc(to)]);
    expect((end - start) / 3_600_000).toBe(hours);
  });

  test('of an hour that the wall shows twice, both belong to the day that began the evening before', () => {
    for (const twice of ['2026-11-01T06:30Z', '2026-11-01T07:30Z']) {
      expect(dayOf(utc(twice), '04:00', chicago)).toBe('2026-10-31');
    }
  });

  test('days follow each other without a gap or an overlap, all year', () => {
    const days = Array.from({ length: 365 }, (_, i) =>
      new Date(Date.UTC(2026, 0, 1 + i)).toISOString().slice(0, 10),
    );
    for (const [at, day] of days.slice(1).entries()) {
      expect(dayBounds(day, '04:00', chicago).start).toBe(dayBounds(days[at] ?? '', '04:00', chicago).end);
    }
  });
});
