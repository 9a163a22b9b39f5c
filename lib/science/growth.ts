import { allFinite, finiteOrNull, increasing } from './finite.ts';
import { leastPlace } from './root.ts';

/**
 * Growth of Clostridium perfringens and Bacillus cereus, rates μ in log10 per h, T in °C. Class A and only as
 * upper bounds: a low figure is never an argument (other organisms, toxins that heat does not destroy, unknown
 * handling). Outside (Tmin, Tmax) the rate is 0, which is not death and not safety. Counts stop near 8 log10/g
 * and no ceiling is in the formulas: show anything above 3 as "more than 3", nothing to more than one decimal.
 */
export type Species = 'beef' | 'chicken' | 'pork';

/**
 * Juneja, Marks, Huang and Thippareddi 2011, Food Microbiology 28:791–795 (numbers read in a public copy; units
 * inferred). Beef's q0 stands there as 0.0699; 0.00699 is our correction, with which the model agrees with the
 * published growth of a cooling.
 */
const perfringens: Record<Species, { b: number; tMin: number; c: number; tMax: number; q0: number }> = {
  beef: { b: 0.05, tMin: 10.15, c: 0.238, tMax: 53, q0: 0.00699 },
  chicken: { b: 0.048, tMin: 9.74, c: 0.208, tMax: 52.1, q0: 0.0105 },
  pork: { b: 0.047, tMin: 10.69, c: 0.252, tMax: 52.8, q0: 0.0137 },
};

export const isSpecies = (name: string): name is Species => Object.hasOwn(perfringens, name);

/** μ = (b (T − Tmin))²·(1 − e^(c (T − Tmax))) [log10/h] (Ratkowsky); 0 outside. Null when T is no number. */
export function muPerfringens(species: Species, T: number): number | null {
  return Number.isFinite(T) ? ratkowsky(species, T) : null;
}

function ratkowsky(species: Species, T: number): number {
  const { b, tMin, c, tMax } = perfringens[species];
  if (T <= tMin || T >= tMax) return 0;
  return (b * (T - tMin)) ** 2 * (1 - Math.exp(c * (T - tMax)));
}

export type Cardinal = { muOpt: number; tMin: number; tOpt: number; tMax: number };

const perHour = (natural: number): number => natural / Math.LN10;

/** Cardinal values, μopt published in ln per h. One-step dynamic analysis, Food Control (abstract read). */
const roastedChicken: Cardinal = { muOpt: perHour(6.06), tMin: 8.8, tOpt: 46.4, tMax: 51.5 };
const braisedBeef: Cardinal = { muOpt: perHour(5.64), tMin: 10.3, tOpt: 43.5, tMax: 53.4 };
/** Hwang and Huang 2019, Food Control (read in a public copy; unit inferred). Above 40 °C it is no upper bound. */
export const cereusInRice: Cardinal = { muOpt: perHour(2.21), tMin: 8.23, tOpt: 37.6, tMax: 46.8 };

function ctmi({ muOpt, tMin, tOpt, tMax }: Cardinal, T: number): number {
  if (T <= tMin || T >= tMax) return 0;
  const below = (tOpt - tMin) * ((tOpt - tMin) * (T - tOpt) - (tOpt - tMax) * (tOpt + tMin - 2 * T));
  return (muOpt * (T - tMax) * (T - tMin) ** 2) / below;
}

/** Rosso et al. 1993, with cardinal temperatures, [log10/h]; 0 outside. Null unless Tmin < Topt < Tmax, μopt ≥ 0. */
export function muCardinal(values: Cardinal, T: number): number | null {
  const { muOpt, tMin, tOpt, tMax } = values;
  if (!allFinite(muOpt, tMin, tOpt, tMax, T) || muOpt < 0 || !(tMin < tOpt && tOpt < tMax)) return null;
  return finiteOrNull(ctmi(values, T));
}

/** The largest of the three models of C. perfringens at T °C. */
const envelope = (T: number): number =>
  Math.max(ratkowsky('beef', T), ctmi(roastedChicken, T), ctmi(braisedBeef, T));

/** Where beef's rate is largest, °C: about 47. */
const beefPeak = leastPlace((T) => -ratkowsky('beef', T), perfringens.beef.tMin, perfringens.beef.tMax);

/** The largest rate between lo and hi: each of the three rises to one peak, so only its nearest place counts. */
function highestBetween(lo: number, hi: number): number {
  const nearest = (peak: number): number => Math.min(Math.max(peak, lo), hi);
  return Math.max(
    ratkowsky('beef', nearest(beefPeak)),
    ctmi(roastedChicken, nearest(roastedChicken.tOpt)),
    ctmi(braisedBeef, nearest(braisedBeef.tOpt)),
  );
}

/** Equal steps a stretch for the trapezoids. */
const STEPS = 4000;

function integral(rate: (T: number) => number, curve: (share: number) => number, hours: number): number {
  let sum = (rate(curve(0)) + rate(curve(1))) / 2;
  for (let i = 1; i < STEPS; i += 1) sum += rate(curve(i / STEPS));
  return (sum * hours) / STEPS;
}

/** Growth with lag: log10((1 + q0·10^A)/(1 + q0)), written so that a large A does not overflow. */
const withLag = (A: number, q0: number): number => A + Math.log10(q0 + 10 ** -A) - Math.log10(1 + q0);

/** A point of a temperature curve: [hours, °C]. */
export type Point = readonly [number, number];

/** The curve between two points over 0 … 1, straight or exponential toward `toward`; null when it does not exist. */
function curveOf(a: number, b: number, toward: number | null): ((share: number) => number) | null {
  if (toward === null) return (share) => a + (b - a) * share;
  const ratio = (b - toward) / (a - toward);
  if (!Number.isFinite(ratio) || ratio <= 0) return null;
  return (share) => toward + (a - toward) * ratio ** share;
}

export type Profile = {
  beef: number;
  chicken: number;
  pork: number;
  noLagBeef: number;
  noLagEnvelope: number;
};

/**
 * Growth over a known temperature curve [log10]: with lag for the three species, without lag for beef and for the
 * envelope of the models; trapezoids over 4000 steps a stretch. `toward` null: straight lines; else °C that each
 * stretch approaches exponentially. Null with fewer than 2 points, times that do not increase, or an exponential
 * stretch with a temperature at or on both sides of `toward`.
 */
export function growthOver(points: readonly Point[], toward: number | null): Profile | null {
  if (points.length < 2 || !increasing(points.map(([t]) => t))) return null;
  if (!allFinite(...points.map(([, T]) => T)) || (toward !== null && !Number.isFinite(toward))) return null;
  const sums = { beef: 0, chicken: 0, pork: 0, envelope: 0 };
  for (let i = 1; i < points.length; i += 1) {
    const [from, to] = [points[i - 1], points[i]];
    if (from === undefined || to === undefined) return null;
    const curve = curveOf(from[1], to[1], toward);
    if (curve === null) return null;
    const hours = to[0] - from[0];
    for (const species of ['beef', 'chicken', 'pork'] as const)
      sums[species] += integral((T) => ratkowsky(species, T), curve, hours);
    sums.envelope += integral(envelope, curve, hours);
  }
  return {
    beef: withLag(sums.beef, perfringens.beef.q0),
    chicken: withLag(sums.chicken, perfringens.chicken.q0),
    pork: withLag(sums.pork, perfringens.pork.q0),
    noLagBeef: sums.beef,
    noLagEnvelope: sums.envelope,
  };
}

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

/**
 * From readings in °F ± u (t in h): beef with lag on straight lines (to explain, never to argue with), and the
 * upper step: each stretch at the largest rate between its readings, widened by u. The step supposes that the food
 * stayed between its two readings. Null with fewer than 2 readings, times that do not increase or u < 0.
 */
export function growthFromReadings(
  t: readonly number[],
  T: readonly number[],
  u: number,
): { beefLinear: number; noLagUpperStep: number } | null {
  if (t.length < 2 || t.length !== T.length || !increasing(t) || !allFinite(...T, u) || u < 0) return null;
  let steps = 0;
  let straight = 0;
  for (let i = 1; i < t.length; i += 1) {
    const [a = 0, b = 0] = [T[i - 1], T[i]];
    const hours = (t[i] ?? 0) - (t[i - 1] ?? 0);
    steps += hours * highestBetween(celsius(Math.min(a, b) - u), celsius(Math.max(a, b) + u));
    const [from, to] = [celsius(a), celsius(b)];
    straight += integral(
      (at) => ratkowsky('beef', at),
      (share) => from + (to - from) * share,
      hours,
    );
  }
  return { beefLinear: withLag(straight, perfringens.beef.q0), noLagUpperStep: steps };
}

/** The published coolings of rice: from 54.5 to 7.2 °C, exponential (Juneja et al. 2018, J Food Prot 81:430). */
const RICE = { from: 54.5, to: 7.2 } as const;

/** B. cereus without lag [log10] over 54.5·(7.2/54.5)^(t/hours) °C. Null when hours ≤ 0 or as `muCardinal`. */
export function cereusNoLag(hours: number, values: Cardinal): number | null {
  if (!(hours > 0) || !Number.isFinite(hours) || muCardinal(values, values.tOpt) === null) return null;
  return integral(
    (T) => ctmi(values, T),
    (share) => RICE.from * (RICE.to / RICE.from) ** share,
    hours,
  );
}
