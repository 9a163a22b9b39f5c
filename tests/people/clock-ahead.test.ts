import { v7 } from 'uuid';
import { expect, test } from 'vitest';
import { freshSecret, type Session } from '#app/server/session.ts';
import { isNear, sessionTimes } from '#app/server/session-times.ts';

const now = Date.parse('2026-10-17T12:00:00Z');
const day = 86_400_000;

test('a secret entered while the server’s clock was ahead is not fresh until that day', () => {
  const person = v7();
  const entered = (at: number): Session => ({
    site: v7(),
    device: v7(),
    deviceName: 'phone',
    language: 'en',
    room: null,
    hands: [{ person, since: at, lastSeenAt: at, confirmedAt: at }],
    hand: person,
  });
  expect(freshSecret(entered(now - 60_000), person, now)).toBe(true);
  expect(freshSecret(entered(now + 30_000), person, now)).toBe(true); // two clocks of one house
  expect(freshSecret(entered(now - 6 * 60_000), person, now)).toBe(false);
  for (const days of [1, 10, 29])
    expect(freshSecret(entered(now + 30 * day), person, now + days * day)).toBe(false);
});

test('nor does its shift stand; a clock that was set back by an hour signs nobody out', () => {
  expect(isNear(now + day, sessionTimes.shiftMin, now)).toBe(false);
  expect(isNear(now + day / 24, sessionTimes.idleMin, now)).toBe(true);
  expect(isNear(now - day / 2, sessionTimes.shiftMin, now)).toBe(true);
});
