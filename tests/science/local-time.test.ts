import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { elapsedLocal, exists, instantsOf, localDay } from '#lib/science/local-time.ts';

const HOUR = 3_600_000;
const zones = [
  'America/Chicago',
  'America/New_York',
  'America/Phoenix',
  'Europe/Madrid',
  'Australia/Lord_Howe',
  'Asia/Kathmandu',
  'UTC',
] as const;

/** The wall clock of a zone by the runtime's own formatter: another way to the zone data than the code's. */
function wall(zone: string, ms: number): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(ms);
  const of = (type: string): string => parts.find((part) => part.type === type)?.value ?? '';
  return `${of('year')}-${of('month')}-${of('day')}T${of('hour')}:${of('minute')}:${of('second')}`;
}

/** Whole seconds from 2020 to 2030, often within two days of a change of the clocks in 2026. */
const changes = [
  '2026-03-08T08:00:00Z',
  '2026-11-01T07:00:00Z',
  '2026-04-04T15:00:00Z',
  '2026-10-25T01:00:00Z',
];
const moments = fc.oneof(
  fc.integer({ min: Date.UTC(2020) / 1000, max: Date.UTC(2030) / 1000 }).map((s) => s * 1000),
  fc
    .tuple(fc.constantFrom(...changes), fc.integer({ min: -48 * 3600, max: 48 * 3600 }))
    .map(([change, s]) => Date.parse(change) + s * 1000),
);

describe('elapsed time', () => {
  test('is the difference of instants, whatever the clocks do in between', () => {
    let differs = 0;
    fc.assert(
      fc.property(fc.constantFrom(...zones), moments, moments, (zone, a, b) => {
        const foldOf = (ms: number): number =>
          Math.max(0, instantsOf(zone, wall(zone, ms))?.indexOf(ms) ?? -1);
        const found = elapsedLocal(
          zone,
          { local: wall(zone, a), fold: foldOf(a) },
          { local: wall(zone, b), fold: foldOf(b) },
        );
        expect([found?.startMs, found?.endMs]).toEqual([a, b]);
        expect(found?.hours ?? Number.NaN).toBeCloseTo((b - a) / HOUR, 9);
        if (found !== null && Math.abs(found.hours - found.wallClockHours) > 0.4) differs += 1;
      }),
      { numRuns: 600, seed: 79 },
    );
    expect(differs).toBeGreaterThan(50); // the clocks did change in between
  });

  test('over the two nights of 2026 in Chicago, by hand', () => {
    // Spring: 23:00 to 05:00 is five hours. Autumn: seven; and from the first to the second 01:30 one hour.
    const between = (start: string, end: string, folds: [number, number] = [0, 0]) =>
      elapsedLocal('America/Chicago', { local: start, fold: folds[0] }, { local: end, fold: folds[1] })
        ?.hours;
    expect(between('2026-03-07T23:00', '2026-03-08T05:00')).toBe(5);
    expect(between('2026-10-31T23:00', '2026-11-01T05:00')).toBe(7);
    expect(between('2026-11-01T01:30', '2026-11-01T01:30', [0, 1])).toBe(1);
    expect(exists('America/Chicago', '2026-03-08T02:30')).toBe(false);
    expect(
      elapsedLocal(
        'America/Phoenix',
        { local: '2026-03-07T23:00', fold: 0 },
        { local: '2026-03-08T05:00', fold: 0 },
      )?.hours,
    ).toBe(6);
  });
});

describe('local days', () => {
  test('lie end to end, and last 24 hours but where the clocks change', () => {
    fc.assert(
      fc.property(fc.constantFrom(...zones), fc.integer({ min: 0, max: 1095 }), (zone, day) => {
        const date = (n: number): string => new Date(Date.UTC(2025, 0, 1 + n)).toISOString().slice(0, 10);
        const [today, tomorrow] = [localDay(zone, date(day)), localDay(zone, date(day + 1))];
        expect(today?.endMs).toBe(tomorrow?.startMs);
        expect(wall(zone, today?.startMs ?? 0)).toBe(`${date(day)}T00:00:00`);
        expect(((today?.endMs ?? 0) - (today?.startMs ?? 0)) / HOUR).toBe(today?.hours);
        const offset = (ms: number): number => Date.parse(`${wall(zone, ms)}Z`) - ms;
        const turned = (offset(today?.endMs ?? 0) - offset(today?.startMs ?? 0)) / HOUR;
        expect(today?.hours).toBe(24 - turned);
      }),
      { numRuns: 400, seed: 83 },
    );
  });

  test('of 2026: 23, 25, 24.5 and 23.5 hours', () => {
    expect(localDay('America/Chicago', '2026-03-08')?.hours).toBe(23);
    expect(localDay('America/Chicago', '2026-11-01')?.hours).toBe(25);
    expect(localDay('Australia/Lord_Howe', '2026-04-05')?.hours).toBe(24.5);
    expect(localDay('Australia/Lord_Howe', '2026-10-04')?.hours).toBe(23.5);
    expect(localDay('Nowhere/Town', '2026-10-04')).toBeNull();
  });
});
