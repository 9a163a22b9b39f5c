import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cereusInRice,
  cereusNoLag,
  growthFromReadings,
  growthOver,
  muPerfringens,
  type Point,
} from '#lib/science/growth.ts';
import { LETHALITY, lethality } from '#lib/science/lethality.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

type Kept = { t: number[]; y: number[]; u: number; history: Point[] };

/** Readings in °F, and a history that between two readings stays between them, each widened by u. */
const kept: fc.Arbitrary<Kept> = fc
  .record({
    y: fc.array(number(35, 150), { minLength: 2, maxLength: 5 }),
    steps: fc.array(number(0.2, 4), { minLength: 4, maxLength: 4 }),
    u: number(0, 3),
    wander: fc.array(number(0, 1), { minLength: 24, maxLength: 24 }),
  })
  .map(({ y, steps, u, wander }) => {
    const t = y.map((_, i) => steps.slice(0, i).reduce((sum, step) => sum + step, 0));
    const history: Point[] = [];
    y.slice(1).forEach((b, i) => {
      const [a, from, to] = [y[i] ?? 0, t[i] ?? 0, t[i + 1] ?? 0];
      const [lo, hi] = [Math.min(a, b) - u, Math.max(a, b) + u];
      for (let part = i === 0 ? 0 : 1; part <= 5; part += 1) {
        // On a reading itself the history must lie in both envelopes: within u of the reading.
        const share = wander[(i * 5 + part) % wander.length] ?? 0;
        const end = part === 0 ? a : part === 5 ? b : null;
        const degF = end === null ? lo + share * (hi - lo) : end + u * (2 * share - 1);
        history.push([from + ((to - from) * part) / 5, (degF - 32) / 1.8]);
      }
    });
    return { t, y, u, history };
  });

describe('growth from readings', () => {
  test('the upper bound is above the growth of any history that stays between its readings', () => {
    let near = 0;
    fc.assert(
      fc.property(kept, ({ t, y, u, history }) => {
        const bound = growthFromReadings(t, y, u)?.noLagUpperStep ?? Number.NaN;
        const true_ = growthOver(history, null);
        for (const grown of [true_?.noLagEnvelope, true_?.noLagBeef, true_?.beef])
          expect(grown ?? Number.NaN).toBeLessThanOrEqual(bound + 1e-6);
        if (bound > 0.5 && (true_?.noLagEnvelope ?? 0) > 0.3 * bound) near += 1;
      }),
      { numRuns: 120, seed: 41 },
    );
    expect(near).toBeGreaterThan(20); // not only far above
  }, 60_000);

  test('a straight line between two readings can lie below the truth: it argues for nothing', () => {
    // 130 °F to 60 °F in 2 h: food that stays at 115 °F for an hour and a half grows more than the straight line says.
    const stays: Point[] = [
      [0, (130 - 32) / 1.8],
      [0.1, (115 - 32) / 1.8],
      [1.9, (112 - 32) / 1.8],
      [2, (60 - 32) / 1.8],
    ];
    const found = growthFromReadings([0, 2], [130, 60], 0);
    const grown = growthOver(stays, null)?.beef ?? 0;
    expect(grown).toBeGreaterThan(found?.beefLinear ?? Number.POSITIVE_INFINITY);
    expect(grown).toBeLessThan(found?.noLagUpperStep ?? 0);
  });

  test('a wider reading or one more reading inside never raises what the narrower said', () => {
    fc.assert(
      fc.property(kept, number(0, 3), ({ t, y, u }, more) => {
        const at = (half: number): number => growthFromReadings(t, y, half)?.noLagUpperStep ?? Number.NaN;
        expect(at(u + more)).toBeGreaterThanOrEqual(at(u) - 1e-9);
        const [a = 0, b = 0] = y;
        const [from = 0, to = 0] = t;
        const closer = growthFromReadings(
          [from, (from + to) / 2, ...t.slice(1)],
          [a, (a + b) / 2, ...y.slice(1)],
          u,
        );
        expect(closer?.noLagUpperStep ?? Number.NaN).toBeLessThanOrEqual(at(u) + 1e-9);
      }),
      { numRuns: 120, seed: 43 },
    );
  });

  test('the rate is nothing outside its range and highest near 47 °C, as the model prints it', () => {
    expect(muPerfringens('beef', 10.15)).toBe(0);
    expect(muPerfringens('beef', 53)).toBe(0);
    // (0.05 · (47 − 10.15))² · (1 − e^(0.238 · (47 − 53))) = 3.394806 · (1 − 0.239785) = 2.580784
    expect(muPerfringens('beef', 47)).toBeCloseTo(2.5808, 3);
    for (const T of [20, 30, 40, 44, 50, 52])
      expect(muPerfringens('beef', T) ?? 9).toBeLessThan(muPerfringens('beef', 47) ?? 0);
  });
});

test('B. cereus without lag is above the most growth that was observed in cooling rice and meat', () => {
  // Juneja et al. 2018, J Food Prot 81:430 (abstract): 3.05–3.68, 3.89–4.44, 4.91–5.32 log10 in 15, 18 and 21 h.
  for (const [hours, most] of [
    [15, 3.68],
    [18, 4.44],
    [21, 5.32],
  ] as const)
    expect(cereusNoLag(hours, cereusInRice) ?? 0).toBeGreaterThan(most);
});

test('the lethality that is counted is never more than that of a core that stayed at or above its lower reading', () => {
  fc.assert(
    fc.property(
      fc.array(number(120, 165), { minLength: 2, maxLength: 6 }),
      fc.array(number(0, 1), { minLength: 40, maxLength: 40 }),
      number(0, 2),
      (T, wander, u) => {
        const t = T.map((_, i) => i * 7);
        const rates = { d140: 1.95, z: 10, ...LETHALITY };
        const counted = lethality({ ...rates, t, T, u })?.stepLower ?? Number.NaN;
        // The truth: seven minutes between readings, each minute somewhere from the lower reading − u upward.
        let truth = 0;
        for (let i = 1; i < T.length; i += 1)
          for (let minute = 0; minute < 7; minute += 1) {
            const lower = Math.min(T[i - 1] ?? 0, T[i] ?? 0) - u;
            const degF = lower + 6 * (wander[(i * 7 + minute) % 40] ?? 0);
            truth += degF < LETHALITY.floor ? 0 : 10 ** ((Math.min(degF, LETHALITY.cap) - 140) / 10) / 1.95;
          }
        expect(counted).toBeLessThanOrEqual(truth + 1e-9);
      },
    ),
    { numRuns: 300, seed: 47 },
  );
});
