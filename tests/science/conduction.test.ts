import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Body, centreTime, coolingOf, type Shape, theta } from '#lib/science/conduction.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const material = fc.record({ h: number(5, 200), k: number(0.35, 0.6), alpha: number(1e-7, 1.6e-7) });
const length = number(0.03, 0.3);
const bodies: fc.Arbitrary<Body> = fc.oneof(
  fc.record({ kind: fc.constant('slab' as const), halfThickness: number(0.015, 0.1) }),
  fc.record({ kind: fc.constant('brick' as const), sides: fc.tuple(length, length, length) }),
  fc.record({ kind: fc.constant('finite_cylinder' as const), diameter: length, height: length }),
);

/**
 * The middle of a slab, cylinder or sphere at Fourier number `fo` by shells of equal thickness: heat flows between
 * neighbours and through the film into air at 0, from 1 everywhere. It knows nothing of roots and series.
 */
function byShells(shape: Shape, bi: number, fo: number, shells: number): number {
  const power = { slab: 0, cylinder: 1, sphere: 2 }[shape];
  const dx = 1 / shells;
  const face = (r: number): number => r ** power;
  const volume = Array.from(
    { length: shells },
    (_, i) => (((i + 1) * dx) ** (power + 1) - (i * dx) ** (power + 1)) / (power + 1),
  );
  const steps = Math.ceil(fo / (0.15 * dx * dx));
  const dt = fo / steps;
  const T = new Float64Array(shells).fill(1);
  const flow = new Float64Array(shells + 1);
  for (let step = 0; step < steps; step += 1) {
    for (let i = 1; i < shells; i += 1) flow[i] = (face(i * dx) * ((T[i] ?? 0) - (T[i - 1] ?? 0))) / dx;
    flow[shells] = (-face(1) * (T[shells - 1] ?? 0)) / (1 / bi + dx / 2);
    for (let i = 0; i < shells; i += 1)
      T[i] = (T[i] ?? 0) + (dt * ((flow[i + 1] ?? 0) - (flow[i] ?? 0))) / (volume[i] ?? 1);
  }
  // The middle itself lies half a shell inside: straight on from the two innermost in r².
  const [inner, next] = [T[0] ?? 0, T[1] ?? 0];
  return inner + (inner - next) / 8;
}

test('the series agrees with shells that exchange heat, in slab, cylinder and sphere', () => {
  for (const shape of ['slab', 'cylinder', 'sphere'] as const)
    for (const bi of [0.2, 1, 5, 40])
      for (const fo of [0.1, 0.4, 1]) {
        const found = theta(shape, bi, fo, 0)?.full ?? Number.NaN;
        const shells = byShells(shape, bi, fo, 40);
        expect([shape, bi, fo, Math.abs(found - shells) < 0.004]).toEqual([shape, bi, fo, true]);
      }
});

describe('of every body and material in range', () => {
  test('the middle falls from start to air, never out of them', () => {
    fc.assert(
      fc.property(bodies, material, number(0.05, 20), number(0.05, 20), (body, made, a, b) => {
        const cooling = coolingOf(body, made);
        if (cooling === null) return;
        const [early, late] = [cooling.theta(Math.min(a, b)), cooling.theta(Math.max(a, b))];
        expect(early ?? 1).toBeLessThanOrEqual(1 + 1e-6);
        expect(late ?? 1).toBeGreaterThanOrEqual(0);
        expect(late ?? 1).toBeLessThanOrEqual((early ?? 1) + 1e-9);
        expect(cooling.j).toBeGreaterThanOrEqual(1);
      }),
      { numRuns: 60, seed: 23 },
    );
  });

  test('a stronger surface and a thinner body pass the target sooner', () => {
    fc.assert(
      fc.property(number(0.02, 0.08), material, number(1.05, 2), (half, made, more) => {
        const start = { from: 150, air: 36, target: 70 };
        const time = (halfThickness: number, h: number): number =>
          centreTime({ kind: 'slab', halfThickness }, { ...made, h }, start)?.full ??
          Number.POSITIVE_INFINITY;
        const plain = time(half, made.h);
        expect(time(half, made.h * more)).toBeLessThanOrEqual(plain);
        expect(time(half * more, made.h)).toBeGreaterThanOrEqual(plain);
      }),
      { numRuns: 40, seed: 29 },
    );
  });

  test('the full series is at the target when it says so', () => {
    fc.assert(
      fc.property(bodies, material, number(45, 130), (body, made, target) => {
        const start = { from: 150, air: 36, target };
        const [found, cooling] = [centreTime(body, made, start), coolingOf(body, made)];
        if (found?.full == null || cooling === null) return;
        expect(36 + 114 * (cooling.theta(found.full) ?? Number.NaN)).toBeCloseTo(target, 4);
      }),
      { numRuns: 60, seed: 31 },
    );
  });

  test('the first term alone is within 2 % at the middle from a Fourier number of 0.2 on', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<Shape>('slab', 'cylinder', 'sphere'),
        number(-3, 3),
        number(0.2, 2),
        (shape, lgBi, fo) => {
          const found = theta(shape, 10 ** lgBi, fo, 0);
          const full = found?.full ?? Number.NaN;
          expect(Math.abs((found?.firstTerm ?? Number.NaN) - full)).toBeLessThanOrEqual(0.02 * full);
        },
      ),
      { numRuns: 150, seed: 33 },
    );
  });

  test('a brick is the product of its three slabs, and a very long one cools like its cross-section', () => {
    fc.assert(
      fc.property(material, length, length, number(0.2, 8), (made, a, b, hours) => {
        const slab = (side: number): number =>
          coolingOf({ kind: 'slab', halfThickness: side / 2 }, made)?.theta(hours) ?? Number.NaN;
        const brick = coolingOf({ kind: 'brick', sides: [a, b, 0.2] }, made)?.theta(hours) ?? Number.NaN;
        expect(brick).toBeCloseTo(slab(a) * slab(b) * slab(0.2), 9);
        const long = coolingOf({ kind: 'brick', sides: [a, b, 5] }, made)?.theta(hours) ?? Number.NaN;
        expect(Math.abs(long - slab(a) * slab(b))).toBeLessThan(1e-6);
      }),
      { numRuns: 40, seed: 37 },
    );
  });
});

test('no number for a side that is none, a target beyond the air, or a surface out of range', () => {
  const made = { h: 10, k: 0.5, alpha: 1.4e-7 };
  const start = { from: 150, air: 36, target: 70 };
  const pan: Body = { kind: 'slab', halfThickness: 0.05 };
  expect(centreTime(pan, made, start)?.full).toBeGreaterThan(1);
  expect(centreTime({ kind: 'slab', halfThickness: 0 }, made, start)).toBeNull();
  expect(centreTime(pan, { ...made, h: -1 }, start)).toBeNull();
  expect(centreTime(pan, made, { ...start, target: 36 })).toBeNull();
  expect(centreTime(pan, made, { ...start, target: 151 })).toBeNull();
  expect(theta('slab', 2e5, 1, 0)).toBeNull();
});
