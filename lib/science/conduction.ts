import besselj0 from '@stdlib/math-base-special-besselj0';
import besselj1 from '@stdlib/math-base-special-besselj1';
import { allFinite, finiteOrNull } from './finite.ts';
import { bisect } from './root.ts';

/**
 * Conduction of heat in a homogeneous body that is at one temperature everywhere and is put at t = 0 into steady
 * air. θ = (T − Ta)/(Ti − Ta); L half-thickness of a slab (a pan cooled on one face: its full depth), R radius,
 * h [W/m²K], k [W/mK], α [m²/s]; Bi = hL/k, Fo = αt/L². Series of Carslaw and Jaeger (memory; recomputed).
 * Real meat is no brick, drips and evaporates: a predicted time is good to ±30 %.
 */
export type Shape = 'slab' | 'cylinder' | 'sphere';

const TERMS = 60;
const MOST_HOURS = 200;
const LEAST_BI = 0.001;
const MOST_BI = 1e5;

const biInRange = (bi: number): boolean => bi >= LEAST_BI && bi <= MOST_BI;

/** Zero n (from 1) of J0, and of J1 (its zero 0 is 0). McMahon's first term is nearer than 0.3 to each. */
const zeroOfJ0 = (n: number): number =>
  bisect(besselj0, (n - 0.25) * Math.PI - 0.3, (n - 0.25) * Math.PI + 0.3);
const zeroOfJ1 = (n: number): number =>
  n === 0 ? 0 : bisect(besselj1, (n + 0.25) * Math.PI - 0.3, (n + 0.25) * Math.PI + 0.3);

type Terms = {
  root: (bi: number, n: number) => number;
  factor: (mu: number) => number;
  space: (mu: number, x: number) => number;
};

const shapes: Record<Shape, Terms> = {
  slab: {
    root: (bi, n) =>
      bisect((mu) => mu * Math.sin(mu) - bi * Math.cos(mu), (n - 1) * Math.PI, (n - 0.5) * Math.PI),
    factor: (mu) => (4 * Math.sin(mu)) / (2 * mu + Math.sin(2 * mu)),
    space: (mu, x) => Math.cos(mu * x),
  },
  cylinder: {
    root: (bi, n) => bisect((mu) => mu * besselj1(mu) - bi * besselj0(mu), zeroOfJ1(n - 1), zeroOfJ0(n)),
    factor: (mu) => (2 * besselj1(mu)) / (mu * (besselj0(mu) ** 2 + besselj1(mu) ** 2)),
    space: (mu, x) => besselj0(mu * x),
  },
  sphere: {
    root: (bi, n) =>
      bisect((mu) => mu * Math.cos(mu) - (1 - bi) * Math.sin(mu), (n - 1) * Math.PI, n * Math.PI),
    factor: (mu) => (4 * (Math.sin(mu) - mu * Math.cos(mu))) / (2 * mu - Math.sin(2 * mu)),
    space: (mu, x) => (x === 0 ? 1 : Math.sin(mu * x) / (mu * x)),
  },
};

/** Root n (from 1) and its factor C_n, for any Bi > 0; the range is for the callers to keep. */
export function rootOf(shape: Shape, bi: number, n: number): { mu: number; factor: number } {
  const mu = shapes[shape].root(bi, n);
  return { mu, factor: shapes[shape].factor(mu) };
}

/** μ_1 and C_1 of the series. Null when Bi is outside 0.001 … 1e5. Class S. */
export const firstRoot = (shape: Shape, bi: number): { mu1: number; c1: number } | null => {
  if (!biInRange(bi)) return null;
  const { mu, factor } = rootOf(shape, bi, 1);
  return { mu1: mu, c1: factor };
};

/** The series of one shape and Bi at the place `x`: θ as a function of Fo. */
type Series = {
  of: (fo: number) => number | null;
  mu1: number;
  c1: number;
  firstTerm: (fo: number) => number;
};

/** What is left of the last term where the 60 terms no longer serve. */
const NEGLIGIBLE = 1e-9;
/** e^−45 is below the last digit of a sum near 1. */
const NOTHING = 45;

function series(shape: Shape, bi: number, x: number): Series {
  const rates: number[] = [];
  const sizes: number[] = [];
  let first = { mu: 0, factor: 0 };
  for (let n = 1; n <= TERMS; n += 1) {
    const { mu, factor } = rootOf(shape, bi, n);
    if (n === 1) first = { mu, factor };
    rates.push(mu * mu);
    sizes.push(factor * shapes[shape].space(mu, x));
  }
  const fastest = rates.at(-1) ?? 0;
  return {
    mu1: first.mu,
    c1: first.factor,
    firstTerm: (fo) => (sizes[0] ?? 0) * Math.exp(-(rates[0] ?? 0) * fo),
    of: (fo) => {
      if (Math.exp(-fastest * fo) > NEGLIGIBLE) return x === 0 || fo === 0 ? 1 : null;
      let sum = 0;
      for (let n = 0; n < TERMS; n += 1) {
        const away = (rates[n] ?? 0) * fo;
        if (away > NOTHING) break; // the rates rise: all later terms are smaller still
        sum += (sizes[n] ?? 0) * Math.exp(-away);
      }
      return sum;
    },
  };
}

/**
 * θ at x (0 centre … 1 surface) by 60 terms, and by the first term alone (within 2 % at the centre for Fo ≥ 0.2;
 * may exceed 1 before). `full` is null where 60 terms do not serve (Fo under about 0.002) except at the centre,
 * which has not moved then. Null when Bi is outside 0.001 … 1e5, Fo < 0 or x outside 0 … 1. Class S.
 */
export function theta(
  shape: Shape,
  bi: number,
  fo: number,
  x: number,
): { full: number | null; firstTerm: number } | null {
  if (!biInRange(bi) || !(fo >= 0) || !Number.isFinite(fo) || !(x >= 0 && x <= 1)) return null;
  const built = series(shape, bi, x);
  return { full: built.of(fo), firstTerm: built.firstTerm(fo) };
}

export type Material = {
  /** Surface coefficient, W/m²K. */
  h: number;
  /** Conductivity, W/mK. */
  k: number;
  /** Diffusivity, m²/s. */
  alpha: number;
};

/** One direction of a body: a slab or a cylinder of half-size `half` [m]. */
type Side = { shape: 'slab' | 'cylinder'; half: number };

/** A body that is a product of directions: a slab, a brick (three), a cylinder of finite height (two). */
export type Body =
  | { kind: 'slab'; halfThickness: number }
  | { kind: 'brick'; sides: readonly number[] }
  | { kind: 'finite_cylinder'; diameter: number; height: number };

function sidesOf(body: Body): Side[] {
  if (body.kind === 'slab') return [{ shape: 'slab', half: body.halfThickness }];
  if (body.kind === 'brick') return body.sides.map((side) => ({ shape: 'slab', half: side / 2 }));
  return [
    { shape: 'cylinder', half: body.diameter / 2 },
    { shape: 'slab', half: body.height / 2 },
  ];
}

const positive = (value: number): boolean => Number.isFinite(value) && value > 0;

export type Cooling = {
  /** θ at `hours`, at the place the body was built for. */
  theta: (hours: number) => number | null;
  /** Hours for a tenth of the difference, once the lag is over: ln 10/(Σ μ² α/L²). */
  f: number;
  /** Lag factor at the centre: Π C_1. */
  j: number;
};

/**
 * A body in steady air as the product of its directions (brick: three slabs L_i = d_i/2, each with its own Bi;
 * finite cylinder: cylinder × slab). `x` is the place along the first direction, 0 centre … 1 surface. Null when a
 * length, h, k or α is not positive or a Bi is outside 0.001 … 1e5. Class S, with shape, h and α named as assumed.
 */
export function coolingOf(body: Body, { h, k, alpha }: Material, x = 0): Cooling | null {
  const sides = sidesOf(body);
  if (![h, k, alpha, ...sides.map(({ half }) => half)].every(positive) || sides.length === 0) return null;
  if (!sides.every(({ half }) => biInRange((h * half) / k)) || !(x >= 0 && x <= 1)) return null;
  const parts = sides.map(({ shape, half }, place) => ({
    perHour: (3600 * alpha) / half ** 2,
    built: series(shape, (h * half) / k, place === 0 ? x : 0),
  }));
  const fall = parts.reduce((sum, { perHour, built }) => sum + built.mu1 ** 2 * perHour, 0);
  return {
    f: Math.LN10 / fall,
    j: parts.reduce((product, { built }) => product * built.c1, 1),
    theta: (hours) => {
      let product = 1;
      for (const { perHour, built } of parts) {
        const part = built.of(perHour * hours);
        if (part === null) return null;
        product *= part;
      }
      return product;
    },
  };
}

/** Hours until θ(t) = `wanted`, between 1 s and 200 h; null outside. θ falls all the way. */
function hoursUntil(cooling: Cooling, wanted: number): number | null {
  const gap = (hours: number): number => (cooling.theta(hours) ?? 1) - wanted;
  const soonest = 1 / 3600;
  if (gap(MOST_HOURS) > 0 || gap(soonest) < 0) return null;
  return bisect(gap, soonest, MOST_HOURS);
}

export type Start = { from: number; air: number; target: number };

const between = ({ from, air, target }: Start): boolean =>
  allFinite(from, air, target) && (from - target) * (target - air) > 0;

export type CentreTime = { f: number; j: number; firstTerm: number | null; full: number | null };

/**
 * When the centre of a body passes `target`: f [h], j, hours by the first term f·log10(j (Ti − Ta)/(Tt − Ta)), and
 * by the full series. `full` null: more than 200 h. Null when the body is out of range (see `coolingOf`) or the
 * target does not lie strictly between air and start. f, j class S; the times class W.
 */
export function centreTime(body: Body, material: Material, start: Start): CentreTime | null {
  if (!between(start)) return null;
  const cooling = coolingOf(body, material);
  if (cooling === null) return null;
  const wanted = (start.target - start.air) / (start.from - start.air);
  return {
    f: cooling.f,
    j: cooling.j,
    firstTerm: finiteOrNull(cooling.f * Math.log10(cooling.j / wanted)),
    full: hoursUntil(cooling, wanted),
  };
}

/**
 * When the surface of a slab reaches `target` (°C or °F alike): Fo of θ(Bi, Fo, x = 1), and seconds Fo·L²/α. Null
 * as `coolingOf`, when the target is not strictly between, or after more than 200 h. Class W.
 */
export function slabTimeToSurface(
  halfThickness: number,
  material: Material,
  start: Start,
): { fo: number; seconds: number } | null {
  if (!between(start)) return null;
  const cooling = coolingOf({ kind: 'slab', halfThickness }, material, 1);
  if (cooling === null) return null;
  const hours = hoursUntil(cooling, (start.target - start.air) / (start.from - start.air));
  return hours === null
    ? null
    : { fo: (3600 * hours * material.alpha) / halfThickness ** 2, seconds: 3600 * hours };
}

const uSlab = [0.860972, 0.312133, 0.007986, -0.016192, -0.00119, 0.000581];
const vCylinder = [1.257493, 0.487941, 0.025322, -0.026568, -0.002888, 0.001078];
const polynomial = (terms: readonly number[], x: number): number =>
  terms.reduceRight((sum, term) => sum * x + term, 0);

/**
 * First roots by the polynomials of Lacroix and Castaigne 1987 in ln Bi (as printed in ASHRAE; read, second hand).
 * A check only: within 0.6 % for Bi 0.1 … 10, up to 3.4 % low at 100. Null outside 0.1 … 100. Class S.
 */
export const lacroixCastaigne = (bi: number): { slab: number; cylinder: number } | null =>
  bi >= 0.1 && bi <= 100
    ? { slab: polynomial(uSlab, Math.log(bi)), cylinder: polynomial(vCylinder, Math.log(bi)) }
    : null;
