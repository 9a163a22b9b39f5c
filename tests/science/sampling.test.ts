import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driftDetect, maxCheckInterval, periodicDetect, ruleOfThree, twoTau } from '#lib/science/sampling.ts';
import { guardBand, twoPoint } from '#lib/science/thermometer.ts';
import { Chance } from '../truth/chance.ts';
import { normal } from './foods.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const TRIES = 40_000;

/** The share of tries that come out so. */
const share = (seed: number, happens: (chance: Chance) => boolean): number => {
  const chance = new Chance(seed);
  let many = 0;
  for (let i = 0; i < TRIES; i += 1) if (happens(chance)) many += 1;
  return many / TRIES;
};

describe('the chance of seeing an event is that of events played out', () => {
  test('looks at equal distances, at an event whose beginning nobody chose', () => {
    for (const [length, interval] of [
      [0.5, 2],
      [1.7, 2],
      [3, 2],
    ] as const) {
      const seen = share(length * 10, (chance) => {
        const starts = interval * chance.unit(); // a look lies at every whole interval
        return starts + length >= interval;
      });
      expect(Math.abs(seen - (periodicDetect(length, interval, 1)?.one ?? 9))).toBeLessThan(0.01);
    }
  });

  test('several events, and looks at moments by chance', () => {
    const found = periodicDetect(0.5, 2, 3);
    const atLeastOne = share(5, (chance) => [1, 2, 3].some(() => 2 * chance.unit() + 0.5 >= 2));
    const random = share(7, (chance) => -2 * Math.log(1 - chance.unit()) <= 0.5); // the wait until the next look
    expect(Math.abs(atLeastOne - (found?.atLeastOne ?? 9))).toBeLessThan(0.01);
    expect(Math.abs(random - (found?.random ?? 9))).toBeLessThan(0.01);
  });

  test('of a cabinet as bad as the rule of three allows, one in twenty still shows n good looks', () => {
    for (const n of [1, 10, 30, 90]) {
      const { upper, approx } = ruleOfThree(n, 0.05) ?? { upper: 9, approx: 9 };
      const allGood = share(n, (chance) => {
        for (let i = 0; i < n; i += 1) if (chance.unit() < upper) return false;
        return true;
      });
      expect(Math.abs(allGood - 0.05)).toBeLessThan(0.005);
      if (n >= 30) expect(Math.abs(approx - upper)).toBeLessThan(0.05 * approx);
    }
  });
});

describe('looks no further apart than the longest interval', () => {
  const lost = fc.record({
    from: number(140, 180),
    air: number(60, 95),
    tau: number(0.5, 12),
    u: number(0, 2),
    allowed: number(0.1, 4),
  });

  test('find the loss of heat before food has been below the limit for longer than allowed', () => {
    fc.assert(
      fc.property(lost, number(0, 1), number(-1, 1), (given, phase, error) => {
        const limit = 135;
        const found = maxCheckInterval({ ...given, limit });
        if (found === null) return;
        const at = (t: number): number => given.air + (given.from - given.air) * Math.exp(-t / given.tau);
        // Staff act on every reading below limit + 2u; the thermometer is wrong by as much as it may be.
        let look = phase * found.maxInterval;
        while (at(look) + error * given.u >= limit + 2 * given.u) look += found.maxInterval;
        expect(look - found.tLimit).toBeLessThanOrEqual(given.allowed + 1e-9);
      }),
      { numRuns: 500, seed: 71 },
    );
  });

  test('and looks a tenth further apart do not always', () => {
    let late = 0;
    for (let seed = 0; seed < 400; seed += 1) {
      const chance = new Chance(seed);
      const given = { from: 160, air: 75, tau: 3, limit: 135, u: 1, allowed: 0.5 };
      const { tLimit, maxInterval } = maxCheckInterval(given) ?? { tLimit: 0, maxInterval: 1 };
      const at = (t: number): number => given.air + (given.from - given.air) * Math.exp(-t / given.tau);
      let look = chance.unit() * maxInterval * 1.1;
      while (at(look) + 1 >= 137) look += maxInterval * 1.1;
      if (look - tLimit > given.allowed) late += 1;
    }
    expect(late).toBeGreaterThan(5);
  });
});

test('the food in a cabinet without heat follows its air as small steps of time say', () => {
  for (const [tauAir, tauFood] of [
    [0.5, 4],
    [2, 2],
    [3, 1],
  ] as const) {
    const given = { from: 150, air: 75, tauAir, tauFood, limit: 135 };
    const found = twoTau(given);
    let [food, reached, at1h] = [150, 0, 0];
    const dt = 1e-4;
    for (let t = 0; t < 12; t += dt) {
      const air = 75 + 75 * Math.exp(-t / tauAir);
      if (Math.abs(t - 1) < dt / 2) at1h = food;
      if (reached === 0 && food <= 135) reached = t;
      food += (dt * (air - food)) / tauFood;
    }
    expect(Math.abs((found?.tFoodLimit ?? 99) - reached)).toBeLessThan(0.002);
    expect(Math.abs((found?.foodAfter1h ?? 0) - at1h)).toBeLessThan(0.02);
  }
});

test('a drift is warned of no later than said, whenever the looks fall', () => {
  const given = { mean: 150, sigma: 1.5, k: 3, drift: 0.4, interval: 4, limit: 135 };
  const found = driftDetect(given);
  let latest = 0;
  for (let phase = 0; phase < 1; phase += 0.01) {
    let look = phase * given.interval;
    while (150 - given.drift * look > (found?.warnLimit ?? 0)) look += given.interval;
    latest = Math.max(latest, look);
  }
  expect(latest).toBeLessThanOrEqual(found?.tWarnWorst ?? 0);
  expect(latest).toBeGreaterThan((found?.tWarnWorst ?? 0) - 0.1);
  expect(150 - given.drift * (found?.tLimit ?? 0)).toBeCloseTo(135, 9);
});

describe('a thermometer', () => {
  test('that errs by a straight line is put right by two baths, at any temperature', () => {
    fc.assert(
      fc.property(
        number(0.95, 1.05),
        number(-2, 2),
        number(195, 212),
        number(32, 200),
        (slope, off, boils, truth) => {
          const reads = (degF: number): number => slope * degF + off;
          const found = twoPoint(
            { ice: reads(32), boiling: reads(boils), boils, uIce: 0.1, uBoil: 0.5, uRead: 0.3 },
            reads(truth),
          );
          if (Math.abs(reads(32) - 32) > 10 || Math.abs(reads(boils) - boils) > 10) expect(found).toBeNull();
          else expect(found?.value ?? Number.NaN).toBeCloseTo(truth, 6);
        },
      ),
      { numRuns: 300, seed: 73 },
    );
  });

  test('the spread of a corrected reading is that of baths and readings played out', () => {
    const chance = new Chance(19);
    const found = twoPoint({ ice: 33, boiling: 210, boils: 208, uIce: 0.3, uBoil: 0.8, uRead: 0.5 }, 140);
    const values = Array.from({ length: 20_000 }, () => {
      // What is not known: where the two true bath temperatures and the reading lie.
      const [ice, boils] = [32 + 0.3 * normal(chance), 208 + 0.8 * normal(chance)];
      const gain = (boils - ice) / (210 - 33);
      return ice + gain * (140 + 0.5 * normal(chance) - 33);
    });
    const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
    const spread = Math.sqrt(values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / values.length);
    expect(Math.abs(mean - (found?.value ?? 0))).toBeLessThan(0.02);
    expect(Math.abs(spread / (found?.u ?? 9) - 1)).toBeLessThan(0.03);
  });

  test('the chance of being at or above the limit is that of true values spread about the reading', () => {
    for (const y of [133, 135, 136.5]) {
      const found = guardBand(y, 135, 1, 1);
      const above = share(y, (chance) => y + normal(chance) >= 135);
      expect(Math.abs(above - (found?.pConform ?? 9))).toBeLessThan(0.01);
    }
  });
});
