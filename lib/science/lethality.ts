import { linearRegression } from 'simple-statistics';
import { allFinite, finiteOrNull, increasing } from './finite.ts';

/**
 * Death of Salmonella in whole beef by heat: D(T) = D140·10^((140 − T)/z), minutes for one log10, T in °F. For
 * other foods and organisms nothing is answered. From the FSIS Appendix A roast beef table (read in a copy). A
 * value below what was asked argues for more cooking or discarding; a value above it proves nothing, for between
 * readings the heat may have been off, and the rule is the table, which the judge reads. Never shown on a sheet or
 * to the staff of the line.
 */
const REFERENCE = 140;
const LOGS = 6.5;

/** D(T) [min] and the time for 6.5 log10. Null when D140 or z ≤ 0. Class S. */
export function dValue(d140: number, z: number, T: number): { d: number; t65: number } | null {
  if (!allFinite(d140, z, T) || d140 <= 0 || z <= 0) return null;
  const d = finiteOrNull(d140 * 10 ** ((REFERENCE - T) / z));
  return d === null ? null : { d, t65: LOGS * d };
}

export type TimesTable = { T: readonly number[]; minutes: readonly number[]; logReduction: number };

const usable = ({ T, minutes, logReduction }: TimesTable, least: number): boolean =>
  T.length >= least &&
  T.length === minutes.length &&
  allFinite(...T) &&
  minutes.every((t) => Number.isFinite(t) && t > 0) &&
  Number.isFinite(logReduction) &&
  logReduction > 0;

export type DzFit = { z: number; d140: number; maxAbsResidual: number; rmsResidual: number };

/**
 * Least squares of log10(t) on T: z = −1/slope, D140 at 140 °F, and what is left (largest, and root of the mean
 * square over all rows, in log10 min). Null with fewer than 2 rows, a time ≤ 0, all T equal or a slope that is not
 * negative. Class S.
 */
export function fitDz(table: TimesTable): DzFit | null {
  if (!usable(table, 2) || new Set(table.T).size < 2) return null;
  const points = table.T.map((T, i): [number, number] => [T, Math.log10(table.minutes[i] ?? Number.NaN)]);
  const { m: slope, b: intercept } = linearRegression(points);
  if (!(slope < 0)) return null;
  const left = points.map(([T, log]) => log - (intercept + slope * T));
  return {
    z: -1 / slope,
    d140: 10 ** (intercept + REFERENCE * slope) / table.logReduction,
    maxAbsResidual: Math.max(...left.map(Math.abs)),
    rmsResidual: Math.sqrt(left.reduce((sum, each) => sum + each ** 2, 0) / left.length),
  };
}

/**
 * The D140 [min] with which no time is shorter than the table's: the largest t/log·10^((T − 140)/z) over its rows.
 * Null for a table without rows, a time ≤ 0 or z ≤ 0. Class S.
 */
export function conservativeD140(table: TimesTable, z: number): number | null {
  if (!usable(table, 1) || !(z > 0)) return null;
  return finiteOrNull(
    Math.max(
      ...table.T.map((T, i) => ((table.minutes[i] ?? 0) / table.logReduction) * 10 ** ((T - REFERENCE) / z)),
    ),
  );
}

/** No credit below the floor, and the rate of the cap above it, °F. Ours: the table starts at 130, ends at 158. */
export const LETHALITY = { floor: 130, cap: 160 } as const;

export type Heating = {
  /** Minutes, increasing; °F. */
  t: readonly number[];
  T: readonly number[];
  d140: number;
  z: number;
  floor: number;
  cap: number;
  /** Half-width of a reading, °F; only the lower step subtracts it. */
  u: number;
  /** Where the probe was; elsewhere than in the core or the coldest place nothing is answered. */
  spot?: string;
};

const deepEnough = new Set(['core', 'coldest', 'coldest_place']);

/** Log10 over a straight line from a to b in `length` minutes. */
function overLine(a: number, b: number, length: number, rate: (T: number) => number, h: Heating): number {
  if (a === b) return length * rate(a);
  const [lo, hi] = [Math.min(a, b), Math.max(a, b)];
  const perDegree = length / (hi - lo);
  const p = Math.max(lo, h.floor);
  const q = Math.min(hi, h.cap);
  const rising = q > p ? perDegree * (h.z / Math.LN10) * (rate(q) - rate(p)) : 0;
  return hi > h.cap ? rising + perDegree * (hi - Math.max(lo, h.cap)) * rate(h.cap) : rising;
}

/**
 * Log10 from readings of the core, three ways: `stepLower` d·rate(min − u), a lower bound only if the food never
 * fell below the lower of two readings; `linearExact` over straight lines; `trapezoid`. Inside floor … cap they
 * grow in that order. Null with fewer than 2 readings, times that do not increase, D140 or z ≤ 0, cap below floor,
 * or a probe not in the core or the coldest place. Class A.
 */
export function lethality(
  heating: Heating,
): { stepLower: number; linearExact: number; trapezoid: number } | null {
  const { t, T, d140, z, floor, cap, u } = heating;
  if (t.length < 2 || t.length !== T.length || !increasing(t)) return null;
  if (!allFinite(...T, d140, z, floor, cap, u) || d140 <= 0 || z <= 0 || u < 0 || cap < floor) return null;
  if (heating.spot !== undefined && !deepEnough.has(heating.spot)) return null;
  const rate = (at: number): number => (at < floor ? 0 : 10 ** ((Math.min(at, cap) - REFERENCE) / z) / d140);
  const sum = { stepLower: 0, linearExact: 0, trapezoid: 0 };
  for (let i = 1; i < t.length; i += 1) {
    const [a = 0, b = 0] = [T[i - 1], T[i]];
    const length = (t[i] ?? 0) - (t[i - 1] ?? 0);
    sum.stepLower += length * rate(Math.min(a, b) - u);
    sum.linearExact += overLine(a, b, length, rate, heating);
    sum.trapezoid += (length * (rate(a) + rate(b))) / 2;
  }
  return allFinite(sum.stepLower, sum.linearExact, sum.trapezoid) ? sum : null;
}
