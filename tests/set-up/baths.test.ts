import { expect, test } from 'vitest';
import { expectedOf } from '#app/probe/baths.ts';

// Boiling points by the usual tables of altitude: 212.0 °F at the sea, about 203 °F at 5,000 ft, 194 °F at 10,000 ft.
test.each([
  ['ice', 'degF', 1600, '32'],
  ['ice', 'degC', null, '0'],
  ['boiling', 'degF', null, ''],
  ['reference', 'degF', 0, ''],
  ['boiling', 'degF', 6000, ''], // outside what the formula speaks of: asked for
] as const)('a bath of %s in %s at %s m should read "%s"', (bath, unit, altitude, words) => {
  expect(expectedOf(bath, unit, altitude)).toBe(words);
});

test.each([
  ['degF', 0, 212.0],
  ['degC', 0, 100.0],
  ['degF', 1524, 203], // 5,000 ft
  ['degF', 3048, 194], // 10,000 ft
] as const)('water boils in %s at %s m at about %s', (unit, altitude, table) => {
  expect(Math.abs(Number(expectedOf('boiling', unit, altitude)) - table)).toBeLessThan(0.6);
});
