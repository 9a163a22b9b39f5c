import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Assumed,
  type BoundReading,
  belowLimitBounds,
  boundsByStretch,
  kMax,
} from '#lib/science/bounds.ts';
import { Chance } from '../truth/chance.ts';
import { degF, foodIn, timesOf } from '../truth/food.ts';
import { LEAD_IN, settingOf } from '../truth/surroundings.ts';
import { type Curve, curveOf } from './curves.ts';

const SLACK = 1e-6;
const LIMIT = 135;
const seeds = fc.integer({ min: 0, max: 2 ** 31 });

/** Readings of a curve at uneven moments, each at most u wrong. */
function readingsOf(at: (t: number) => number, hours: number, u: number, chance: Chance): BoundReading[] {
  const readings: BoundReading[] = [];
  for (let t = 0; t <= hours; t += chance.between(0.05, hours / 2))
    readings.push({ t, y: at(t) + u * chance.between(-1, 1) });
  return readings;
}

type Drawn = { curve: Curve; readings: BoundReading[]; assumed: Assumed };

function drawn(seed: number): Drawn {
  const chance = new Chance(seed);
  const held = {
    k: chance.between(0.05, 3),
    coldest: chance.between(33, 95),
    g: chance.is(0.4) ? 0 : chance.between(5, 90),
  };
  const u = chance.is(0.2) ? 0 : chance.between(0.1, 3);
  const curve = curveOf(chance, held, chance.between(125, 190), chance.between(1, 14));
  const readings = readingsOf(curve.at, curve.hours, u, chance);
  return {
    curve,
    readings,
    assumed: { u, limit: LIMIT, kMax: held.k, coldest: held.coldest, gMax: held.g },
  };
}

describe('while the core falls and warms no faster than assumed', () => {
  test('the true time below the limit lies inside the bounds, whole and in every stretch', () => {
    let [told, both] = [0, 0];
    fc.assert(
      fc.property(seeds, (seed) => {
        const { curve, readings, assumed } = drawn(seed);
        const found = boundsByStretch(readings, assumed);
        if (found === null) return; // too few readings, or one at the assumed air
        const [from, to] = [readings[0]?.t ?? 0, readings.at(-1)?.t ?? 0];
        const truth = curve.below(LIMIT, from, to);
        expect(found.inconsistent).toBe(0);
        expect(truth).toBeGreaterThanOrEqual(found.belowLower - SLACK);
        expect(truth).toBeLessThanOrEqual(found.belowUpper + SLACK);
        found.stretches.forEach((stretch, i) => {
          if (stretch === 'inconsistent') throw new Error('no stretch breaks the assumption');
          const [a, b] = [readings[i]?.t ?? 0, readings[i + 1]?.t ?? 0];
          const here = curve.below(LIMIT, a, b);
          expect(here).toBeGreaterThanOrEqual(stretch[1] - SLACK);
          expect(b - a - here).toBeGreaterThanOrEqual(stretch[0] - SLACK);
        });
        told += 1;
        if (found.belowLower > 0.01 && found.shownSafe > 0.01) both += 1;
      }),
      { numRuns: 600, seed: 7 },
    );
    expect(told).toBeGreaterThan(400);
    expect(both).toBeGreaterThan(40); // the bounds say something, they are not only wide
  });

  test('with the true rates taken too small the truth leaves the bounds: the property can fail', () => {
    let outside = 0;
    for (let seed = 0; seed < 300; seed += 1) {
      const { curve, readings, assumed } = drawn(seed);
      const found = belowLimitBounds(readings, {
        ...assumed,
        kMax: assumed.kMax / 3,
        gMax: assumed.gMax / 3,
      });
      if (found === null) continue;
      const truth = curve.below(LIMIT, readings[0]?.t ?? 0, readings.at(-1)?.t ?? 0);
      if (found.inconsistent > 0 || truth < found.belowLower - SLACK || truth > found.belowUpper + SLACK)
        outside += 1;
    }
    expect(outside).toBeGreaterThan(50);
  });

  test('a wider assumption never narrows the bounds', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: 1, max: 3, noNaN: true }), (seed, wider) => {
        const { readings, assumed } = drawn(seed);
        const narrow = belowLimitBounds(readings, assumed);
        const wide = belowLimitBounds(readings, {
          ...assumed,
          kMax: assumed.kMax * wider,
          gMax: assumed.gMax * wider,
        });
        if (narrow === null || wide === null) return;
        expect(wide.shownSafe).toBeLessThanOrEqual(narrow.shownSafe + SLACK);
        expect(wide.belowLower).toBeLessThanOrEqual(narrow.belowLower + SLACK);
        expect(wide.belowUpper).toBeGreaterThanOrEqual(narrow.belowUpper - SLACK);
      }),
      { numRuns: 300, seed: 11 },
    );
  });
});

test('against the truth machine: doors, trips of the power and swings, the core always inside the bounds', () => {
  let [told, safe] = [0, 0];
  for (let seed = 0; seed < 1500; seed += 1) {
    const chance = new Chance(seed);
    const minutes = chance.between(60, 1200);
    const { stretches, first, tau } = settingOf('hot_hold', chance, minutes, {});
    if (stretches.some(({ stirred }) => stirred)) continue; // stirring mixes: nothing bounds the core then
    const food = foodIn({ surface: 5, ...tau }, stretches, { surface: first, edge: first, core: first });
    const [coldest, hottest] = [
      Math.min(first, ...stretches.map(({ around }) => around)),
      Math.max(first, ...stretches.map(({ around }) => around)),
    ];
    const u = chance.between(0, 2);
    const at = (t: number): number => degF(food, 'core', t * 60);
    const readings = readingsOf(at, minutes / 60, u, chance);
    const found = belowLimitBounds(readings, {
      u,
      limit: LIMIT,
      kMax: 60 / tau.core,
      coldest: coldest - 0.01,
      gMax: ((hottest - coldest) * 60) / tau.core,
    });
    if (found === null) continue;
    const times = timesOf(food, 'core', 'below', LIMIT, 0, (readings.at(-1)?.t ?? 0) * 60);
    let truth = 0;
    for (let i = 0; i < times.length; i += 2) truth += ((times[i + 1] ?? 0) - (times[i] ?? 0)) / 60;
    expect(found.inconsistent).toBe(0);
    expect(truth).toBeGreaterThanOrEqual(found.belowLower - 1e-3);
    expect(truth).toBeLessThanOrEqual(found.belowUpper + 1e-3);
    told += 1;
    if (found.shownSafe > 0.5) safe += 1;
  }
  expect(LEAD_IN).toBeLessThan(0); // the food is followed from before the step, so the core has its history
  expect(told).toBeGreaterThan(300);
  expect(safe).toBeGreaterThan(30);
});

/** The middle of a slab of `thick` m by small cells, heated and cooled from its faces: °F each second step. */
function middleOfSlab(thick: number, alpha: number, h: number, air: (t: number) => number, hours: number) {
  const cells = 21;
  const dx = thick / cells;
  const dt = (0.4 * dx * dx) / alpha;
  const bi = (h * dx) / 0.48;
  const T = new Float64Array(cells).fill(40);
  const out: { t: number; y: number }[] = [];
  for (let s = 0; s < hours * 3600; s += dt) {
    const before = T.slice();
    const outside = air(s / 3600);
    // A half cell of food and the surface film lie between the outermost cell's middle and the air.
    const film = bi / (1 + bi / 2);
    for (let i = 0; i < cells; i += 1) {
      const here = before[i] ?? 0;
      const left = i === 0 ? film * (outside - here) : (before[i - 1] ?? 0) - here;
      const right = i === cells - 1 ? film * (outside - here) : (before[i + 1] ?? 0) - here;
      T[i] = here + ((alpha * dt) / (dx * dx)) * (left + right);
    }
    out.push({ t: s / 3600, y: T[(cells - 1) / 2] ?? 0 });
  }
  return out;
}

test('the core of a slab that was heated from outside never falls faster than k_max of its thickness', () => {
  for (const [thick, h, heated] of [
    [0.05, 200, 1.5],
    [0.08, 40, 3],
    [0.1, 300, 6],
    [0.12, 15, 12],
  ] as const) {
    const alpha = 1.4e-7;
    const fastest = kMax([thick], alpha) ?? Number.NaN;
    const middle = middleOfSlab(thick, alpha, h, (t) => (t < heated ? 250 : 38), heated + 6);
    let steepest = 0;
    for (let i = 1; i < middle.length; i += 1) {
      const [a, b] = [middle[i - 1], middle[i]];
      if (a === undefined || b === undefined || a.y < 45) continue;
      steepest = Math.max(steepest, (a.y - b.y) / (b.t - a.t) / (a.y - 38));
    }
    expect([thick, steepest <= fastest * 1.002]).toEqual([thick, true]);
    expect(steepest).toBeGreaterThan(fastest * 0.2); // it did fall
  }
});

test('k_max of a plate of 10 cm and of a cube of 10 cm, worked out by hand', () => {
  // 3600 · 1.6e-7 · 2.4674011 / 0.05² = 0.5684892; a cube has three times as much.
  expect(kMax([0.1], 1.6e-7)).toBeCloseTo(0.5684892, 6);
  expect(kMax([0.1, 0.1, 0.1], 1.6e-7)).toBeCloseTo(1.7054676, 6);
});

test('no number outside the range: air not colder, a probe not in the core, two pieces, times that stand still', () => {
  const readings = [
    { t: 0, y: 150 },
    { t: 2, y: 140 },
  ];
  const assumed = { u: 1, limit: 135, kMax: 0.3, coldest: 70, gMax: 0 };
  expect(belowLimitBounds(readings, assumed)).not.toBeNull();
  for (const wrong of [
    { coldest: 135 },
    { coldest: 139.5 },
    { spot: 'thin_end' },
    { onePiece: false },
    { kMax: 0 },
    { gMax: -1 },
    { u: Number.NaN },
  ])
    expect([wrong, belowLimitBounds(readings, { ...assumed, ...wrong })]).toEqual([wrong, null]);
  expect(belowLimitBounds([{ t: 0, y: 150 }], assumed)).toBeNull();
  expect(belowLimitBounds([...readings, { t: 2, y: 139 }], assumed)).toBeNull();
});
