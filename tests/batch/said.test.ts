import { describe, expect, test } from 'vitest';
import { length, type Say, temperature, timeSaid } from '#app/batch/said.ts';

const say: Say = (key, values) =>
  ({
    minutes: `${values?.m} min`,
    hours: `${values?.h} h`,
    hours_minutes: `${values?.h} h ${values?.m} min`,
  })[key] ?? key;

describe('lengths are said in hours and minutes', () => {
  test.each([
    [0, 'down', '0 min'],
    [59.9, 'down', '59 min'],
    [60, 'down', '1 h'],
    [188, 'down', '3 h 08 min'],
    [187.2, 'up', '3 h 08 min'],
    [187.8, 'down', '3 h 07 min'],
  ] as const)('%s rounded %s is "%s"', (minutes, round, words) => {
    expect(length(say, minutes, round)).toBe(words);
  });
});

test('temperatures have a decimal only where there is one', () => {
  expect(temperature(135, 'degF')).toBe('135 °F');
  expect(temperature(7.200000000000003, 'degF')).toBe('7.2 °F');
});

test('a time of another local day says its day', () => {
  const at = {
    zone: 'America/Chicago',
    clock: '24' as const,
    locale: 'en',
    now: Date.parse('2026-10-17T06:00:00Z'),
  };
  expect(timeSaid(Date.parse('2026-10-17T05:10:00Z'), at)).toBe('00:10');
  expect(timeSaid(Date.parse('2026-10-17T04:50:00Z'), at)).toBe('23:50, Oct 16');
});
