import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  adjustedForNeighbours,
  cusum,
  driftCrossing,
  ewma,
  individuals,
  runRules,
} from '#lib/science/control-charts.ts';
import { Chance } from '../truth/chance.ts';
import { normal } from './foods.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const values = fc.array(fc.integer({ min: 1300, max: 1600 }), { minLength: 10, maxLength: 60 });
/** A change of scale and origin: Fahrenheit to Celsius is one. */
const change = fc.record({ a: fc.constantFrom(0.5, 1, 2, 4), b: fc.integer({ min: -64, max: 64 }) });

describe('control limits do not depend on the scale', () => {
  test('scaled and moved with the readings', () => {
    fc.assert(
      fc.property(values, change, (x, { a, b }) => {
        const moved = x.map((each) => a * each + b);
        const [plain, other] = [individuals(x), individuals(moved)];
        expect(other?.mean ?? 0).toBeCloseTo(a * (plain?.mean ?? Number.NaN) + b, 6);
        expect(other?.ucl ?? 0).toBeCloseTo(a * (plain?.ucl ?? Number.NaN) + b, 6);
        expect(other?.mrUcl ?? 0).toBeCloseTo(a * (plain?.mrUcl ?? Number.NaN), 6);
        const [adjusted, changed] = [adjustedForNeighbours(x), adjustedForNeighbours(moved)];
        if (adjusted === null || changed === null) {
          expect(changed).toBe(adjusted);
          return;
        }
        expect(changed.r1).toBeCloseTo(adjusted.r1, 9);
        expect(changed.lclAdj).toBeCloseTo(a * adjusted.lclAdj + b, 5);
      }),
      { numRuns: 200, seed: 53 },
    );
  });

  test('run rules see the same in any unit, and in the mirror the other way up', () => {
    fc.assert(
      fc.property(values, change, (x, { a, b }) => {
        const middle = 1450;
        const plain = runRules(x, middle, 40);
        expect(
          runRules(
            x.map((each) => a * each + b),
            a * middle + b,
            a * 40,
          ),
        ).toEqual(plain);
        expect(
          runRules(
            x.map((each) => -each),
            -middle,
            40,
          ),
        ).toEqual(plain);
      }),
      { numRuns: 200, seed: 59 },
    );
  });

  test('the order of readings matters to the limits of neighbours, not to their mean', () => {
    fc.assert(
      fc.property(values, (x) => {
        const backward = x.toReversed();
        expect(individuals(backward)?.mean).toBeCloseTo(individuals(x)?.mean ?? Number.NaN, 9);
        expect(individuals(backward)?.mrBar).toBeCloseTo(individuals(x)?.mrBar ?? Number.NaN, 9);
        const adjusted = adjustedForNeighbours(x);
        if (adjusted !== null)
          expect(adjustedForNeighbours(backward)?.r1 ?? Number.NaN).toBeCloseTo(adjusted.r1, 9);
      }),
      { numRuns: 100, seed: 61 },
    );
  });
});

/** A cabinet whose thermostat swings slowly: each reading keeps `phi` of the last one's distance from 150. */
function swinging(phi: number, sigma: number, many: number, seed: number): number[] {
  const chance = new Chance(seed);
  const own = sigma * Math.sqrt(1 - phi * phi);
  let off = sigma * normal(chance);
  return Array.from({ length: many }, () => {
    off = phi * off + own * normal(chance);
    return 150 + off;
  });
}

test('of a cabinet that swings slowly the adjusted spread is the true one, the naive one is far too narrow', () => {
  for (const phi of [0.5, 0.7, 0.85]) {
    const found = adjustedForNeighbours(swinging(phi, 4, 4000, 100 * phi));
    expect(found?.r1 ?? 0).toBeGreaterThan(phi - 0.06);
    expect(Math.abs((found?.sigmaAdj ?? 0) - 4)).toBeLessThan(0.5);
    // Of independent steps the naive spread would be 4 as well; of these it is 4·√(1 − φ).
    expect(found?.sigmaMr ?? 9).toBeLessThan(4 * Math.sqrt(1 - phi) + 0.3);
  }
  const alone = adjustedForNeighbours(swinging(0, 4, 4000, 3));
  expect(Math.abs((alone?.sigmaAdj ?? 0) - (alone?.sigmaMr ?? 9))).toBeLessThan(0.2);
});

test('three in a thousand independent readings lie outside three sigmas, many of a slow swing outside the naive limits', () => {
  const outside = (x: readonly number[], lcl: number): number => x.filter((each) => each < lcl).length;
  const slow = swinging(0.85, 4, 4000, 5);
  const found = adjustedForNeighbours(slow);
  expect(outside(slow, found?.lclNaive ?? 0)).toBeGreaterThan(200);
  expect(outside(slow, found?.lclAdj ?? 999)).toBeLessThan(20);
  const alone = runRules(swinging(0, 1, 20_000, 7), 150, 1);
  expect((alone?.rule1.length ?? 0) / 20_000).toBeGreaterThan(0.0018);
  expect((alone?.rule1.length ?? 0) / 20_000).toBeLessThan(0.0037); // 0.0027 worked out from the normal
});

test('a step of two sigmas is seen by the smoothed line and by the sums, a level line by neither', () => {
  const stepped = [...swinging(0, 1, 30, 11), ...swinging(0, 1, 30, 13).map((each) => each - 2)];
  const smooth = ewma(stepped, { lambda: 0.2, start: 150, sigma: 1, reach: 3 });
  const sums = cusum(stepped, { target: 150, k: 0.5, h: 5 });
  expect(smooth?.outExactLimits.find((i) => i > 30)).toBeLessThan(40);
  expect(sums?.signals.find((i) => i > 30)).toBeLessThan(40);
  expect(smooth?.outExactLimits.filter((i) => i <= 30)).toEqual([]);
  const level = Array.from({ length: 60 }, () => 150);
  expect(ewma(level, { lambda: 0.2, start: 150, sigma: 1, reach: 3 })?.outExactLimits).toEqual([]);
  expect(cusum(level, { target: 150, k: 0.5, h: 5 })?.signals).toEqual([]);
});

describe('the drift of a line', () => {
  test('without noise it crosses where it crosses, whatever the origin of time', () => {
    fc.assert(
      fc.property(number(140, 170), number(-2, -0.05), number(0, 2e6), (at, slope, origin) => {
        const t = Array.from({ length: 12 }, (_, i) => origin + i * 1.5);
        const found = driftCrossing(
          t,
          t.map((each) => at + slope * (each - origin)),
          135,
        );
        expect(found?.slope ?? Number.NaN).toBeCloseTo(slope, 5);
        const hours = (found?.tCross ?? Number.NaN) - origin;
        expect(Math.abs(hours - (135 - at) / slope)).toBeLessThan(0.01);
      }),
      { numRuns: 200, seed: 67 },
    );
  });

  test('a line that rises crosses nothing, and the error of a slope is the one it has', () => {
    expect(driftCrossing([0, 1, 2], [140, 141, 142], 135)?.tCross).toBeNull();
    // 400 lines of 30 readings with noise 2: the slopes spread as their own error says.
    const t = Array.from({ length: 30 }, (_, i) => i);
    const chance = new Chance(17);
    const found = Array.from({ length: 400 }, () =>
      driftCrossing(
        t,
        t.map((each) => 150 - 0.1 * each + 2 * normal(chance)),
        135,
      ),
    );
    const slopes = found.map((each) => each?.slope ?? Number.NaN);
    const mean = slopes.reduce((sum, each) => sum + each, 0) / slopes.length;
    const spread = Math.sqrt(slopes.reduce((sum, each) => sum + (each - mean) ** 2, 0) / slopes.length);
    const said = found.reduce((sum, each) => sum + (each?.slopeSe ?? 0), 0) / found.length;
    expect(Math.abs(mean + 0.1)).toBeLessThan(0.01);
    expect(Math.abs(spread / said - 1)).toBeLessThan(0.12);
  });
});
