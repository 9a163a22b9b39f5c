import { expect, test } from 'vitest';
import { byPlainCurve, lagHours, mayUsePlainCurve } from '#lib/between/plain-curve.ts';
import { coolingOf } from '#lib/science/conduction.ts';
import { ASSUMED, outlook } from '#lib/science/forecast.ts';
import { bisect } from '#lib/science/root.ts';
import { Chance } from '../truth/chance.ts';
import { normal } from './foods.ts';

const inch = 0.0254;

/** A pan read from its lag on whose first reading is off by 3 to 7 °F; null = it has too few readings. */
function pan(seed: number) {
  const chance = new Chance(seed);
  const depth = chance.between(1.6, 4.7);
  const material = {
    h: Math.exp(chance.between(Math.log(8), Math.log(50))),
    k: chance.between(0.4, 0.56),
    alpha: chance.between(1.15e-7, 1.5e-7),
  };
  const [air, from] = [chance.between(30, 40), chance.between(140, 175)];
  const body = { kind: 'slab', halfThickness: (depth * inch) / 2 } as const;
  const [probe, middle] = [coolingOf(body, material, chance.between(0, 0.1)), coolingOf(body, material)];
  if (probe === null || middle === null) return null;
  const at = (theta: (hours: number) => number | null) => (hours: number) =>
    air + (from - air) * (theta(hours) ?? 1);
  const centre = at(middle.theta);
  const target = chance.one([70, 70, 41] as const);
  if (centre(100) > target) return null;
  const truth = bisect((hours) => centre(hours) - target, 1e-3, 100);
  const until = Math.min(truth, 6) * chance.between(0.3, 0.9);
  const noise = chance.between(0.2, 1.2);
  const [t, y]: [number[], number[]] = [[], []];
  for (
    let hours = lagHours(depth);
    hours < until;
    hours += chance.one([0.25, 0.5, 0.5, 1]) * chance.between(0.8, 1.3)
  ) {
    t.push(hours);
    y.push(Math.round(at(probe.theta)(hours) + noise * normal(chance)));
  }
  if (t.length < 3) return null;
  y[0] = (y[0] ?? 0) + (chance.is(0.5) ? 1 : -1) * Math.floor(chance.between(3, 8));
  return { t, y, said: Math.round(air + normal(chance)), target, truth };
}

test('where a wrong first reading leaves no time, a plain curve holds the true time of at least 85 of 100 pans', () => {
  let [all, inside, late] = [0, 0, 0];
  for (let seed = 1; all < 100; seed += 1) {
    const one = pan(seed);
    if (one === null) continue;
    const [said] = outlook(one, { ...ASSUMED, air: one.said }, [one.target]);
    if (said?.say !== 'does_not_fit') continue;
    const found = byPlainCurve(one, one.said, [one.target])?.[0] ?? null;
    if (found === null || found.latest === null) continue;
    all += 1;
    if (one.truth > found.latest) late += 1;
    else if (one.truth >= found.earliest) inside += 1;
  }
  process.stderr.write(
    `cover of the plain curve: ${((100 * inside) / all).toFixed(1)} % of ${all} pans, ${late} late\n`,
  );
  expect(all).toBe(100);
  expect(inside / all).toBeGreaterThanOrEqual(0.85);
}, 120_000);

test('it is asked for past the lag of a pan of known depth in air that is known, and never else', () => {
  // 0.2 · (0.0254 m)²/(1.4e-7 m²/s) = 921.7 s = 0.256 h for two inches cooled from both faces.
  expect(lagHours(2)).toBeCloseTo(0.256, 3);
  const read = { value: 38, basis: 'read' } as const;
  expect(mayUsePlainCurve([0.26, 0.8, 1.3], read, 2)).toBe(true);
  expect(mayUsePlainCurve([0.25, 0.8, 1.3], read, 2)).toBe(false);
  expect(mayUsePlainCurve([0.26, 0.8, 1.3], { value: 38, basis: 'set' }, 2)).toBe(false);
  expect(mayUsePlainCurve([0.26, 0.8, 1.3], read, null)).toBe(false);
});

test('it has no time from two readings, from readings that lie on no curve, and to a target at the air', () => {
  // 38 + 97·e^(−0.6 t).
  const on = (hours: number): number => 38 + 97 * Math.exp(-0.6 * hours);
  expect(byPlainCurve({ t: [0.5, 1], y: [on(0.5), on(1)] }, 38, [70])).toBeNull();
  expect(byPlainCurve({ t: [0.5, 1, 1.5, 2], y: [120, 95, 110, 70] }, 38, [70])).toBeNull();
  const three = { t: [0.5, 1, 1.5, 2], y: [0.5, 1, 1.5, 2].map(on) };
  const [seventy, near] = byPlainCurve(three, 38, [70, 39]) ?? [];
  // ln(97/32)/0.6 = 1.8483 h.
  expect(seventy?.middle).toBeCloseTo(1.8483, 3);
  expect(near).toBeNull();
});
