import { allFinite } from './finite.ts';

/**
 * For how long the probed core was surely, possibly, surely not below a limit, between sparse readings. The core
 * of a piece that was uniform or heated from outside falls no faster than k_max and warms no faster than g_max.
 * The surface and a thin end can fall far faster: a bound from a core reading speaks of the core only, and `safe`
 * is no proof of hot holding. Below and inconsistent are class A, safe is class S. Derived.
 */

/**
 * k_max [1/h] = 3600·α·(π/2)²·Σ 1/(d/2)² over one to three full sides d [m]: the first-term rate for an infinitely
 * good surface. Take the smallest plausible sides and the largest α (1.6e-7 m²/s). Null when a side or α is not
 * positive, or there are no sides. Class S.
 */
export function kMax(sides: readonly number[], alpha: number): number | null {
  if (sides.length === 0 || sides.length > 3) return null;
  if (![...sides, alpha].every((value) => Number.isFinite(value) && value > 0)) return null;
  return 3600 * alpha * (Math.PI / 2) ** 2 * sides.reduce((sum, side) => sum + 1 / (side / 2) ** 2, 0);
}

export type BoundReading = {
  /** Hours, increasing. */
  t: number;
  /** °F. */
  y: number;
};

export type Assumed = {
  /** Half-width of a reading, °F. */
  u: number;
  /** Lower limit, °F. */
  limit: number;
  /** Fastest fall, 1/h (`kMax`), and the coldest surroundings, °F. */
  kMax: number;
  coldest: number;
  /** Fastest heating, °F/h; 0 = the heat is known to be off. A guess unless measured in this cabinet. */
  gMax: number;
  /** Where the probe was; elsewhere than in the core there is no bound. Left out: the core. */
  spot?: string;
  /** False when the readings are of different pieces, or the piece was cut, opened or moved. */
  onePiece?: boolean;
};

export type Stretch = readonly [safe: number, below: number, notShown: number] | 'inconsistent';

/** Hours. */
export type Bounds = {
  shownSafe: number;
  shownBelow: number;
  inconsistent: number;
  notShown: number;
  belowLower: number;
  belowUpper: number;
};

const SLACK = 1e-9;

/** The lengths of one stretch, written over for every stretch: no object a reading for a year of a sensor. */
class Between {
  safe = 0;
  below = 0;
  fits = true;
  readonly #limit: number;
  readonly #k: number;
  readonly #cold: number;
  readonly #g: number;
  readonly #room: number;
  #lastLength = -1;
  #lastLeft = 1;

  constructor({ limit, kMax: k, coldest, gMax }: Assumed) {
    this.#limit = limit;
    this.#k = k;
    this.#cold = coldest;
    this.#g = gMax;
    this.#room = limit - coldest;
  }

  /** e^(−k d); sensors read at equal distances, so the last one mostly serves. */
  #leftAfter(length: number): number {
    if (length !== this.#lastLength) {
      this.#lastLength = length;
      this.#lastLeft = Math.exp(-this.#k * length);
    }
    return this.#lastLeft;
  }

  #breaks(lo0: number, up0: number, lo1: number, up1: number, length: number): boolean {
    if (lo1 > up0 && lo1 > up0 + this.#g * length + SLACK) return true;
    return up1 < lo0 && up1 < this.#cold + (lo0 - this.#cold) * this.#leftAfter(length) - SLACK;
  }

  /** The stretch counts from 0 to `length`; lower(s) ≥ limit before `a` and from `b`. */
  #safeIn(lo0: number, lo1: number, length: number): number {
    const { limit, g, room, k } = { limit: this.#limit, g: this.#g, room: this.#room, k: this.#k };
    let b = length;
    if (lo1 >= limit) b = g === 0 ? 0 : Math.max(0, length - (lo1 - limit) / g);
    if (lo0 < limit) return b <= 0 ? length : length - b;
    const above = lo0 - this.#cold;
    // ln x ≥ 1 − 1/x: where this much is enough the logarithm is not needed.
    if ((1 - room / above) / k >= b) return length;
    const a = Math.min(length, Math.log(above / room) / k);
    return a >= b ? length : a + (length - b);
  }

  /** upper(s) < limit before `c` and from `e`. */
  #belowIn(up0: number, up1: number, length: number): number {
    const { limit, g, room, k } = { limit: this.#limit, g: this.#g, room: this.#room, k: this.#k };
    if (up0 >= limit && up1 >= limit) return 0;
    let c = 0;
    if (up0 < limit) c = g === 0 ? length : Math.min(length, (limit - up0) / g);
    let e = length;
    if (up1 < limit) e = Math.max(0, length - Math.log(room / (up1 - this.#cold)) / k);
    return c >= e ? length : c + (length - e);
  }

  look(lo0: number, up0: number, lo1: number, up1: number, length: number): void {
    this.fits = !this.#breaks(lo0, up0, lo1, up1, length);
    if (!this.fits) return;
    this.safe = this.#safeIn(lo0, lo1, length);
    this.below = this.#belowIn(up0, up1, length);
  }
}

function usable(readings: readonly BoundReading[], assumed: Assumed): boolean {
  const { u, limit, kMax: k, coldest, gMax, spot, onePiece } = assumed;
  if (!allFinite(u, limit, k, coldest, gMax) || u < 0 || k <= 0 || gMax < 0 || coldest >= limit) return false;
  return readings.length >= 2 && (spot === undefined || spot === 'core') && onePiece !== false;
}

/** One pass; `each` is told of every stretch. Null as `belowLimitBounds`. */
function pass(
  readings: readonly BoundReading[],
  assumed: Assumed,
  each: ((stretch: Stretch) => void) | null,
): Bounds | null {
  const [first] = readings;
  if (first === undefined || !usable(readings, assumed)) return null;
  const { u } = assumed;
  const least = assumed.coldest + u; // lo ≤ coldest: the assumed air is wrong
  if (!(first.y > least) || !Number.isFinite(first.y) || !Number.isFinite(first.t)) return null;
  const between = new Between(assumed);
  let { t, y } = first;
  let safe = 0;
  let below = 0;
  let inconsistent = 0;
  for (let i = 1; i < readings.length; i += 1) {
    const next = readings[i];
    if (next === undefined) return null;
    const length = next.t - t;
    if (!(next.y > least && next.y < Infinity && length > 0 && length < Infinity)) return null;
    between.look(y - u, y + u, next.y - u, next.y + u, length);
    if (between.fits) {
      safe += between.safe;
      below += between.below;
    } else inconsistent += length;
    if (each !== null)
      each(
        between.fits
          ? [between.safe, between.below, Math.max(0, length - between.safe - between.below)]
          : 'inconsistent',
      );
    t = next.t;
    y = next.y;
  }
  const total = t - first.t;
  return {
    shownSafe: safe,
    shownBelow: below,
    inconsistent,
    notShown: Math.max(0, total - safe - below - inconsistent),
    belowLower: below,
    belowUpper: Math.max(0, total - safe),
  };
}

/**
 * Hours of the readings' whole length that the core was surely at or above the limit (`shownSafe`), surely below
 * it (`belowLower`), at most below it (`belowUpper`), and of stretches that cannot be under the assumptions
 * (`inconsistent`: probe moved, another piece, a typing error). With lo, up = y ∓ u the truth lies at s between
 * max(Ta + (lo0 − Ta)e^(−k(s − t0)), lo1 − g (t1 − s)) and min(up0 + g (s − t0), Ta + (up1 − Ta)e^(k(t1 − s))).
 * Null with fewer than 2 readings, times that do not increase, u, g < 0 or k ≤ 0, surroundings not colder than the
 * limit or not colder than a reading, readings of more than one piece, or a probe that is not in the core.
 */
export const belowLimitBounds = (readings: readonly BoundReading[], assumed: Assumed): Bounds | null =>
  pass(readings, assumed, null);

/** The same, and each stretch: hours [safe, below, not shown], or "inconsistent". */
export function boundsByStretch(
  readings: readonly BoundReading[],
  assumed: Assumed,
): (Bounds & { stretches: Stretch[] }) | null {
  const stretches: Stretch[] = [];
  const sums = pass(readings, assumed, (stretch) => stretches.push(stretch));
  return sums === null ? null : { ...sums, stretches };
}
