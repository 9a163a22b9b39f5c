import { expect, test } from 'vitest';
import { nightlyDue, restoreTestDue } from '#db/backup/due.ts';
import { nightlyName, removable } from '#db/backup/folder.ts';
import { backupState, type Ran } from '#db/backup/log.ts';

const at = (text: string): number => Date.parse(text);
const ranAt = (text: string, ok = true, what: Ran['what'] = 'backup'): Ran => ({
  at: text,
  what,
  ok,
  nightly: true,
  file: 'a',
  zone: 'America/Chicago',
  entries: 1,
  bytes: 1,
  sha256: null,
  took_ms: 1,
  detail: null,
});
const due = (runs: Ran[], now: string): boolean => nightlyDue(backupState(runs, at(now)), at(now));

test('a nightly backup is due at the first look after five in the kitchen (demand:55)', () => {
  expect(due([], '2026-10-17T00:00:00Z')).toBe(true);
  const last = [ranAt('2026-10-16T10:30:00Z')]; // 05:30 in Chicago
  expect(due(last, '2026-10-17T09:59:00Z')).toBe(false); // 04:59
  expect(due(last, '2026-10-17T10:00:00Z')).toBe(true); // 05:00
});

test('after a failed one it is tried again an hour later', () => {
  const runs = [ranAt('2026-10-16T10:30:00Z'), ranAt('2026-10-17T10:00:00Z', false)];
  expect(due(runs, '2026-10-17T10:59:00Z')).toBe(false);
  expect(due(runs, '2026-10-17T11:00:00Z')).toBe(true);
  const later = at('2026-10-17T12:00:00Z');
  expect(backupState(runs, later).failed?.at).toBe('2026-10-17T10:00:00Z');
  expect(backupState([...runs, ranAt('2026-10-17T11:00:00Z')], later).failed).toBeNull();
});

test('a run dated later than now, from a clock that was ahead, holds no backup up and is told', () => {
  const ahead = ranAt('2027-10-17T10:00:00Z');
  const last = ranAt('2026-10-16T10:30:00Z');
  for (const run of [ahead, { ...ahead, ok: false }, { ...ahead, what: 'restore_test' as const }]) {
    expect(due([run], '2026-10-17T00:00:00Z')).toBe(true);
    expect(due([last, run], '2026-10-17T09:59:00Z')).toBe(false);
    expect(due([last, run], '2026-10-17T10:00:00Z')).toBe(true);
    const state = backupState([last, run], at('2026-10-17T10:00:00Z'));
    expect(state).toMatchObject({ last, failed: null, tested: null, ahead: run });
    expect(restoreTestDue(state, at('2026-10-17T10:00:00Z'))).toBe(true);
  }
});

test('a restore is tested every seven days', () => {
  const testDue = (ok: boolean, now: string): boolean =>
    restoreTestDue(backupState([ranAt('2026-10-10T10:00:00Z', ok, 'restore_test')], at(now)), at(now));
  expect(testDue(true, '2026-10-17T09:59:00Z')).toBe(false);
  expect(testDue(true, '2026-10-17T10:00:00Z')).toBe(true);
  // One that did not restore is no proof: the next night’s backup is tried.
  expect(testDue(false, '2026-10-11T10:00:00Z')).toBe(true);
});

/** One backup a day at 10:00 UTC, two on the last day, from 2025-10-01 to 2026-10-16 (a Friday). */
const year = [
  ...Array.from({ length: 381 }, (_, n) => nightlyName(at('2025-10-01T10:00:00Z') + n * 86_400_000)),
  nightlyName(at('2026-10-16T11:00:00Z')),
];

test('seven days, four weeks and twelve months are kept, each by its last one', () => {
  const gone = new Set(removable(year, 'America/Chicago'));
  const stays = year.filter((name) => !gone.has(name)).map((name) => name.slice(10, 20));
  expect(stays).toEqual([
    // months: the last day of each; October 2026 by its newest
    '2025-11-30',
    '2025-12-31',
    '2026-01-31',
    '2026-02-28',
    '2026-03-31',
    '2026-04-30',
    '2026-05-31',
    '2026-06-30',
    '2026-07-31',
    '2026-08-31',
    // weeks: Sundays, and the week that is under way
    '2026-09-27',
    '2026-09-30',
    '2026-10-04',
    // days
    '2026-10-10',
    '2026-10-11',
    '2026-10-12',
    '2026-10-13',
    '2026-10-14',
    '2026-10-15',
    '2026-10-16',
  ]);
  expect(gone.has(nightlyName(at('2026-10-16T10:00:00Z')))).toBe(true); // the day's first, not its last
});

test('a file with another name is never removed', () => {
  expect(
    removable([...year, 'before-the-move.jsonl.gz', 'log.jsonl'], 'UTC').every((name) => year.includes(name)),
  ).toBe(true);
});
