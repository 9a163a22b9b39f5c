import { describe, expect, test } from 'vitest';
import { lastTimeOf, wallTime } from '#app/round/wall-time.ts';

const chicago = 'America/Chicago';
const at = (iso: string): number => Date.parse(iso);
// 2026-10-17 03:12 on the wall (offset -05:00)
const now = at('2026-10-17T08:12:30Z');

describe('the time of an earlier look is the last time that the wall showed it', () => {
  test.each([
    ['0215', '24', '2026-10-17T07:15:00Z', 'an hour ago'],
    ['215', '24', '2026-10-17T07:15:00Z', 'three figures are enough'],
    ['0312', '24', '2026-10-17T08:12:00Z', 'this minute'],
    ['0313', '24', '2026-10-16T08:13:00Z', 'a minute ahead can only be yesterday'],
    ['2350', '24', '2026-10-17T04:50:00Z', 'before midnight'],
    ['1150', '12', '2026-10-17T04:50:00Z', 'the nearer of 11:50 am and pm'],
    ['0230', '12', '2026-10-17T07:30:00Z', 'written with its zero: the morning'],
    ['1415', '12', '2026-10-16T19:15:00Z', 'an hour of 24 is understood on any clock'],
  ] as const)('%s on a %s hour clock is %s: %s', (typed, clock, iso, _why) => {
    expect(lastTimeOf(typed, now, chicago, clock)).toBe(at(iso));
  });

  test.each(['', '2', '24', '2460', '2500', '0260', '12345', '1.30'])('"%s" is no time of day', (typed) => {
    expect(lastTimeOf(typed, now, chicago, '24')).toBeNull();
  });

  test('over the hour that clocks skip, the wall decides: 01:30 before, asked at 03:12', () => {
    // 2026-03-08: at 02:00 (08:00Z) clocks in Chicago go to 03:00.
    expect(lastTimeOf('0130', at('2026-03-08T08:12:00Z'), chicago, '24')).toBe(at('2026-03-08T07:30:00Z'));
  });
});

describe('a time is written as the kitchen reads it', () => {
  test.each([
    ['2026-10-17T08:12:00Z', '24', '03:12'],
    ['2026-10-17T08:12:00Z', '12', '3:12 am'],
    ['2026-10-17T05:05:00Z', '12', '12:05 am'],
    ['2026-10-17T17:00:00Z', '12', '12:00 pm'],
    ['2026-10-17T05:05:00Z', '24', '00:05'],
  ] as const)('%s on a %s hour clock is %s', (iso, clock, words) => {
    expect(wallTime(at(iso), chicago, clock)).toBe(words);
  });
});
