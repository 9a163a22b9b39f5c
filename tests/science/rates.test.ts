import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fjFromTwo,
  requiredRate,
  timeTo,
  twoReadingForecast,
  twoReadingRate,
} from '#lib/science/cooling-rate.ts';
import { restTo160 } from '#lib/science/rest.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A piece that follows Newton exactly: start, air, rate in 1/h, and the temperature after so many hours. */
const newton = fc
  .record({ start: number(100, 200), air: number(28, 45), k: number(0.05, 2) })
  .map(({ start, air, k }) => ({ start, air, k, at: (t: number) => air + (start - air) * Math.exp(-k * t) }));

describe('of a piece that follows Newton', () => {
  test('two exact readings give its rate back, and the time to any temperature ahead', () => {
    fc.assert(
      fc.property(newton, number(0.1, 3), number(0.1, 3), number(0.1, 4), (food, t1, step, ahead) => {
        const [first, second] = [food.at(t1), food.at(t1 + step)];
        const found = twoReadingRate(first, second, food.air, step);
        expect(found?.k).toBeCloseTo(food.k, 6);
        const target = food.at(t1 + step + ahead);
        const hours = timeTo(second, food.air, found?.rate ?? Number.NaN, target);
        if (target - food.air > 1e-3) expect(hours ?? Number.NaN).toBeCloseTo(ahead, 4);
      }),
      { numRuns: 500, seed: 3 },
    );
  });

  test('readings and air that are wrong by no more than said keep the true time between earliest and latest', () => {
    let ends = 0;
    const wrong = number(-1, 1);
    fc.assert(
      fc.property(
        newton,
        fc.tuple(number(0, 3), number(0.2, 3)),
        fc.tuple(number(0, 2), number(0, 3)),
        fc.tuple(wrong, wrong, wrong),
        (food, [t1, step], [u, uAir], [e1, e2, eAir]) => {
          const truth = Math.log((food.at(t1 + step) - food.air) / (70 - food.air)) / food.k;
          if (truth < 0) return; // passed before the second reading
          const found = twoReadingForecast(
            {
              first: food.at(t1) + u * e1,
              second: food.at(t1 + step) + u * e2,
              hours: step,
              air: food.air + uAir * eAir,
              u,
              uAir,
            },
            70,
          );
          expect(found?.earliest ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(truth + 1e-6);
          expect(found?.latest ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(truth - 1e-6);
          if (found?.latest != null) ends += 1;
        },
      ),
      { numRuns: 1000, seed: 5 },
    );
    expect(ends).toBeGreaterThan(300); // the ends are not only "no finite time"
  });

  test('a resting piece is at 160 °F when its two readings say so', () => {
    fc.assert(
      fc.property(
        number(165, 205),
        number(65, 95),
        number(0.05, 1),
        number(0.2, 1),
        (start, air, k, step) => {
          const at = (t: number): number => air + (start - air) * Math.exp(-k * t);
          const truth = Math.log((start - air) / (160 - air)) / k;
          const found = restTo160({ t: 0, y: at(0) }, { t: step, y: at(step) }, air);
          if (at(step) < 160) expect(found).toBeNull();
          else expect(found ?? Number.NaN).toBeCloseTo(truth, 5);
        },
      ),
      { numRuns: 300, seed: 9 },
    );
  });

  test('lag factor and f come back from two readings of a piece that lags', () => {
    fc.assert(
      fc.property(number(1, 2), number(1, 12), number(33, 41), (j, f, air) => {
        const at = (t: number): number => air + j * (160 - air) * 10 ** (-t / f);
        const found = fjFromTwo(160, air, { t: 0.5 * f, y: at(0.5 * f) }, { t: f, y: at(f) });
        expect(found?.f ?? Number.NaN).toBeCloseTo(f, 6);
        expect(found?.j ?? Number.NaN).toBeCloseTo(j, 6);
      }),
      { numRuns: 200, seed: 13 },
    );
  });
});

test('a piece at the required rate from 135 °F is at 70 within 2 h and at 41 within 6 h, and no slower one is', () => {
  fc.assert(
    fc.property(number(25, 40.5), number(0.8, 0.999), (air, slower) => {
      const { required } = requiredRate(air) ?? { required: Number.NaN };
      const at = (hours: number, rate: number): number => air + (135 - air) * 10 ** (-rate * hours);
      expect(at(2, required)).toBeLessThanOrEqual(70 + 1e-9);
      expect(at(6, required)).toBeLessThanOrEqual(41 + 1e-9);
      expect(at(2, required * slower) > 70 || at(6, required * slower) > 41).toBe(true);
    }),
    { numRuns: 300, seed: 17 },
  );
});

test('colder by the same factor in every degree: Celsius readings give the same rate', () => {
  fc.assert(
    fc.property(newton, number(0.2, 3), (food, step) => {
      const c = (degF: number): number => (degF - 32) / 1.8;
      const inF = twoReadingRate(food.start, food.at(step), food.air, step);
      const inC = twoReadingRate(c(food.start), c(food.at(step)), c(food.air), step);
      expect(inC?.rate ?? Number.NaN).toBeCloseTo(inF?.rate ?? Number.NaN, 9);
    }),
    { numRuns: 200, seed: 19 },
  );
});
