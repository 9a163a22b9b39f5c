import { describe, expect, it } from 'vitest';
import { boilsByBarometer } from '#app/probe/baths.ts';
import { guardsOf } from '#lib/between/probe-guard.ts';
import { allowedOf, boilingHere, byTwoBaths, checkPoints, suspectLooks } from '#lib/between/probe-record.ts';
import type { Body } from '#shared/entries/entry.ts';
import { type Night, night } from '../fold/night.ts';

const boiling = (written: Night, clock: string, read: number, expected: number): Night =>
  written.add('probe_check', clock, {
    probe: 'red',
    bath: 'boiling',
    typed: String(read),
    value: read,
    unit: 'degF',
    expected,
    accuracy: null,
    note: null,
  });
const red = (written: Night, clock: string) => {
  const book = written.book(clock);
  const probe = book.kitchen.probes.get('red');
  if (probe === undefined) throw new Error('no thermometer');
  return { book, probe, checks: book.checks.filter((check) => check.probe === 'red') };
};

describe('what two baths say of a thermometer', () => {
  it('is the straight line through both, by hand', () => {
    // Ice reads 33, boiling 210 where 208 is true: gain 176/177 = 0.994350, offset 32 − 33 · gain = −0.813559.
    // At 135: 134.237288 − 0.813559 = 133.423729.
    const { probe, checks } = red(boiling(night().ice('18:00', 'red', '33'), '18:10', 210, 208), '19:00');
    const found = byTwoBaths(checks, probe, 135);
    expect(found?.corrected?.gain).toBeCloseTo(0.99435, 5);
    expect(found?.corrected?.value).toBeCloseTo(133.4237, 4);
    expect(found?.corrected?.extrapolates).toBe(false);
  });

  it('is nothing without both baths, and no correction where they cannot both be right', () => {
    const bare = red(night().ice('18:00', 'red', '33'), '19:00');
    expect(byTwoBaths(bare.checks, bare.probe, 135)).toBeNull();
    const off = red(boiling(night().ice('18:00', 'red', '33'), '18:10', 190, 208), '19:00');
    expect(byTwoBaths(off.checks, off.probe, 135)?.corrected).toBeNull();
  });
});

describe('how far a thermometer may be off', () => {
  const profile = night().book('17:30').limits.profile;
  const probe = (more: Partial<Body<'probe'>>): Body<'probe'> => ({
    ...red(night(), '18:00').probe,
    ...more,
  });
  it('is ±2 °F on Fahrenheit, ±1 °C on Celsius and on both, unless its maker says another', () => {
    expect(allowedOf(probe({}), profile)).toMatchObject({ value: 2, ofMaker: false });
    expect(allowedOf(probe({}), profile)?.figure?.section).toBe('4-203.11(B)');
    expect(allowedOf(probe({ scale: 'degC', unit: 'degC' }), profile)?.value).toBe(1);
    expect(allowedOf(probe({ scale: 'both' }), profile)?.value).toBe(1.8);
    expect(allowedOf(probe({ accuracy: 0.7 }), profile)).toMatchObject({ value: 0.7, ofMaker: true });
    expect(allowedOf(probe({}), null)).toBeNull();
  });
});

describe('what its own error leaves of a limit', () => {
  const guards = (written: Night) => {
    const { book, probe } = red(written, '21:00');
    return guardsOf(book, probe, allowedOf(probe, book.limits.profile));
  };
  const held = (typed: string): Night =>
    night()
      .batch('17:00', 'A', 1)
      .step('17:05', 'A', 'hot_hold', 'cab1')
      .read('18:00', 'A1 edge', '160')
      .read('19:00', 'A1 edge', typed);

  it('is 137 °F to 133 °F about 135 °F and 39 to 43 about 41, for one that may be off by 2', () => {
    const [hot, cold] = guards(night());
    expect([hot?.from, hot?.until, cold?.from, cold?.until]).toEqual([137, 133, 39, 43]);
    // u² = 2²/3 + 0.1²/12 = 1.33417; 135 + 1.6448536 · 1.15506 = 136.8999.
    expect(hot?.a95).toBeCloseTo(136.8999, 3);
    expect(cold?.a95).toBeCloseTo(39.1001, 3);
    expect(hot?.last).toBeNull();
  });

  it('decides about the last reading of food held there: further away, too near to tell, beyond', () => {
    expect(guards(held('137'))[0]?.last).toMatchObject({ value: 137, decision: 'shown_at_or_above' });
    expect(guards(held('136.9'))[0]?.last?.decision).toBe('within_device_uncertainty');
    expect(guards(held('133'))[0]?.last?.decision).toBe('within_device_uncertainty');
    expect(guards(held('132.9'))[0]?.last?.decision).toBe('shown_below');
    // Φ(1.9/1.15506) = Φ(1.64494) = 0.9500.
    expect(guards(held('136.9'))[0]?.last?.pConform).toBeCloseTo(0.95, 3);
  });

  it('is nothing where nobody says how far it may be off', () => {
    const { book, probe } = red(night(), '21:00');
    expect(guardsOf(book, probe, null)).toEqual([]);
  });
});

describe('the history of a thermometer', () => {
  it('says how far off each check was, and what a failed one puts in doubt', () => {
    const written = night()
      .batch('17:00', 'A', 1)
      .step('17:05', 'A', 'hot_hold', 'cab1')
      .ice('17:30', 'red', '32.5')
      .read('18:00', 'A1 edge', '150')
      .read('19:00', 'A1 edge', '148')
      .ice('20:00', 'red', '36');
    const { book, checks } = red(written, '21:00');
    expect(checkPoints(checks, 'degF').map(({ off }) => off)).toEqual([0.5, 4]);
    expect(checkPoints(checks, 'degC').map(({ off }) => Number(off.toFixed(4)))).toEqual([0.2778, 2.2222]);
    const failed = checks.at(-1);
    expect(failed?.verdict).toBe('broken');
    const doubted = failed === undefined ? [] : suspectLooks(book, failed);
    expect(doubted.map(({ value }) => value)).toEqual([148, 150]); // newest first
  });
});

describe('what boiling water should read', () => {
  it('comes from a barometer in hPa or inches, and from no other number', () => {
    // Standard pressure: 211.95 °F (99.97 °C); 29.92 inHg is the same. 834 hPa: about 94.6 °C.
    expect(boilsByBarometer(1013.25, 'degF')).toBe('212.0');
    expect(boilsByBarometer(29.92, 'degC')).toBe('100.0');
    expect(Number(boilsByBarometer(834, 'degC'))).toBeCloseTo(94.6, 0);
    for (const wrong of [0, 12, 45, 500, 2000]) expect(boilsByBarometer(wrong, 'degF')).toBeNull();
  });
  it('comes from the height of the kitchen, where it is set up', () => {
    expect(boilingHere(night().book('18:00'))).toBeNull();
  });
});
