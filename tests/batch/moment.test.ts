import { describe, expect, test } from 'vitest';
import { momentOf } from '#app/client/moment.ts';

const zone = 'America/Chicago'; // UTC−5 in October, UTC−6 from 1 November 2026
const now = Date.parse('2026-10-17T00:20:00-05:00');
const at = (choice: Parameters<typeof momentOf>[0], from = now) => {
  const ms = momentOf(choice, from, zone);
  return ms === null ? null : new Date(ms).toISOString();
};

describe('"when" is tapped as minutes ago or typed off the kitchen clock', () => {
  test.each([
    { choice: { minutesAgo: 0 }, expected: '2026-10-17T05:20:00.000Z', why: 'now' },
    { choice: { minutesAgo: 60 }, expected: '2026-10-17T04:20:00.000Z', why: 'gone an hour ago' },
    { choice: { clock: '00:05' }, expected: '2026-10-17T05:05:00.000Z', why: 'earlier tonight' },
    {
      choice: { clock: '23:40' },
      expected: '2026-10-17T04:40:00.000Z',
      why: 'before midnight was yesterday',
    },
    { choice: { clock: '0:20' }, expected: '2026-10-17T05:20:00.000Z', why: 'exactly now is not the future' },
    { choice: { clock: '0021' }, expected: '2026-10-16T05:21:00.000Z', why: 'a minute ahead was a day ago' },
    { choice: { clock: '11:40 pm' }, expected: '2026-10-17T04:40:00.000Z', why: 'a twelve hour clock' },
    { choice: { clock: '12:10 am' }, expected: '2026-10-17T05:10:00.000Z', why: 'twelve at night is hour 0' },
    { choice: { clock: '12.10p' }, expected: '2026-10-16T17:10:00.000Z', why: 'twelve at noon is hour 12' },
  ])('$choice is $expected: $why', ({ choice, expected }) => {
    expect(at(choice)).toBe(expected);
  });

  test.each(['', '25:00', '12:60', 'soon', '13:00 pm', '0:10 am', '7'])('"%s" is no time of day', (clock) => {
    expect(at({ clock })).toBeNull();
  });

  test('on the night on which the clocks go back, a time is read with the offset of that hour (demand:11)', () => {
    // 1 November 2026: 02:00 CDT becomes 01:00 CST. 03:30 CST is 09:30Z; 00:30 CDT is 05:30Z.
    const after = Date.parse('2026-11-01T03:30:00-06:00');
    expect(at({ clock: '00:30' }, after)).toBe('2026-11-01T05:30:00.000Z');
  });
});
