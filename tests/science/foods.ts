import { type Body, type Cooling, coolingOf, type Material } from '#lib/science/conduction.ts';
import { bisect } from '#lib/science/root.ts';
import type { Chance } from '../truth/chance.ts';

/**
 * Synthetic foods that cool, from a seed: shape, depth, surface, cooler and thermometer by chance, the truth by the
 * full series of conduction, and what somebody in a kitchen would have written down of it.
 */
export type Food = {
  shape: Body['kind'];
  air: number;
  from: number;
  /** °F of the centre, hours from the first reading. */
  centre: (hours: number) => number;
  /** °F where the probe is. */
  probed: (hours: number) => number;
  /** When the centre passes a temperature; null = not within 100 hours. */
  passes: (degF: number) => number | null;
};

/** What was written of it: times, rounded readings with the thermometer's noise, and the air as somebody read it. */
export type Written = { t: number[]; y: number[]; air: number };

/** A number with mean 0 and deviation 1 (Box and Muller). */
export const normal = (chance: Chance): number =>
  Math.sqrt(-2 * Math.log(1 - chance.unit())) * Math.cos(2 * Math.PI * chance.unit());

/** A pan on a rack (its bottom hardly cools), a whole brick of meat, a roll or a pail; lengths in m. */
const bodies: readonly [(chance: Chance) => Body, ...((chance: Chance) => Body)[]] = [
  (chance) => ({ kind: 'slab', halfThickness: chance.between(0.02, 0.075) }),
  (chance) => ({
    kind: 'brick',
    sides: [chance.between(0.05, 0.14), chance.between(0.1, 0.25), chance.between(0.15, 0.4)],
  }),
  (chance) => ({
    kind: 'finite_cylinder',
    diameter: chance.between(0.06, 0.28),
    height: chance.between(0.08, 0.35),
  }),
];

const HOURS = 100;

function drawn(chance: Chance): Food | null {
  const body = chance.one(bodies)(chance);
  const material: Material = {
    // Still air to a strong fan; ice baths stay out, where readings by the half hour come too late.
    h: Math.exp(chance.between(Math.log(6), Math.log(50))),
    k: chance.between(0.4, 0.56),
    alpha: chance.between(1.15e-7, 1.5e-7),
  };
  const air = chance.between(30, 40);
  const from = chance.between(135, 175);
  // Nobody hits the middle: up to a tenth of the half-thickness beside it.
  const [probe, middle] = [coolingOf(body, material, chance.between(0, 0.1)), coolingOf(body, material)];
  if (probe === null || middle === null) return null;
  const at = (cooling: Cooling) => (hours: number) =>
    hours === 0 ? from : air + (from - air) * (cooling.theta(hours) ?? 1);
  const centre = at(middle);
  return {
    shape: body.kind,
    air,
    from,
    centre,
    probed: at(probe),
    passes: (degF) =>
      centre(HOURS) > degF ? null : bisect((hours) => centre(hours) - degF, 1 / 3600, HOURS),
  };
}

/** Foods that pass 70 °F between three quarters of an hour and a day: others are not cooled by reading them. */
export function foodOf(chance: Chance): Food {
  for (;;) {
    const food = drawn(chance);
    const at = food?.passes(70) ?? null;
    if (food !== null && at !== null && at > 0.75 && at < 24) return food;
  }
}

/** Readings from the start until `until` hours, at uneven distances, by one thermometer; null with fewer than two. */
export function writtenOf(food: Food, until: number, chance: Chance): Written | null {
  const step = chance.one([0.25, 0.5, 0.5, 1]);
  const noise = chance.between(0.2, 1.2);
  const rounded = chance.is(0.5) ? 1 : 0.1;
  const t: number[] = [];
  const y: number[] = [];
  for (let at = 0; at < until; at += step * chance.between(0.8, 1.3)) {
    t.push(at);
    y.push(Math.round((food.probed(at) + noise * normal(chance)) / rounded) * rounded);
  }
  return t.length < 2 ? null : { t, y, air: Math.round(food.air + normal(chance)) };
}
