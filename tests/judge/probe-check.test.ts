import { describe, expect, it, test } from 'vitest';
import { probeCheck, suspectAfter } from '#lib/judge/probe-check.ts';
import { at, fda, reading } from './records.ts';

describe('a thermometer is kept while it is off by no more than its accuracy (4-203.11)', () => {
  test.each([
    {
      expected: 32,
      read: 33.9,
      unit: 'degF',
      scale: null,
      verdict: 'kept',
      reads: 'high',
      why: 'a tenth inside',
    },
    {
      expected: 32,
      read: 34,
      unit: 'degF',
      scale: null,
      verdict: 'kept',
      reads: 'high',
      why: 'exactly 2 °F',
    },
    {
      expected: 32,
      read: 34.1,
      unit: 'degF',
      scale: null,
      verdict: 'broken',
      reads: 'high',
      why: 'a tenth over',
    },
    {
      expected: 32,
      read: 29.9,
      unit: 'degF',
      scale: null,
      verdict: 'broken',
      reads: 'low',
      why: 'low counts alike',
    },
    {
      expected: 126.3,
      read: 128.3,
      unit: 'degF',
      scale: null,
      verdict: 'kept',
      reads: 'high',
      why: 'floats say more',
    },
    {
      expected: 0,
      read: 0.9,
      unit: 'degC',
      scale: null,
      verdict: 'kept',
      reads: 'high',
      why: 'a tenth inside',
    },
    { expected: 0, read: 1, unit: 'degC', scale: null, verdict: 'kept', reads: 'high', why: 'exactly 1 °C' },
    {
      expected: 0,
      read: -1.1,
      unit: 'degC',
      scale: null,
      verdict: 'broken',
      reads: 'low',
      why: 'a tenth over',
    },
    {
      expected: 32,
      read: 33.8,
      unit: 'degF',
      scale: 'both',
      verdict: 'kept',
      reads: 'high',
      why: '1.8 °F = 1 °C',
    },
    {
      expected: 32,
      read: 33.9,
      unit: 'degF',
      scale: 'both',
      verdict: 'broken',
      reads: 'high',
      why: 'dual scale',
    },
    { expected: 32, read: 32, unit: 'degF', scale: null, verdict: 'kept', reads: null, why: 'exact' },
  ] as const)(
    '$read for $expected $unit: $verdict, $why',
    ({ expected, read, unit, scale, verdict, reads }) => {
      expect(probeCheck({ expected, read, unit, scale, accuracy: null }, fda)).toMatchObject({
        verdict,
        reads,
      });
    },
  );
  it('is held to a finer accuracy where the check names one', () => {
    const check = { expected: 60, read: 60.6, unit: 'degC', scale: null, accuracy: 0.5 } as const;
    expect(probeCheck(check, fda)?.verdict).toBe('broken');
  });
});

describe('a failed check makes every reading of its probe after the last good one suspect', () => {
  const readings = [
    reading(0, 150, { probe: 'a' }),
    reading(1, 150, { probe: 'a' }),
    reading(1, 150, { probe: 'b' }),
    reading(9, 150, { probe: 'a' }),
  ];
  test.each([
    ['a', at(0), [1, 3]],
    ['a', null, [0, 1, 3]],
    ['c', null, []],
    [null, null, []],
  ])('%s after %s: %j', (probe, lastGoodAt, expected) => {
    expect(suspectAfter(readings, probe, lastGoodAt)).toEqual(expected);
  });
});
