import erfc from '@stdlib/math-base-special-erfc';
import { allFinite } from './finite.ts';

/** Boiling point, two-point correction and guard band of a thermometer. None of it changes a verdict. */

/**
 * Pressure [Pa] at a height [m] in the standard atmosphere, ISO 2533 (memory): 101325·(1 − 0.0065 H/288.15)^(g M/(R
 * 0.0065)). Null outside −500 … 5000 m. Class S. Weather moves it by about ±3 kPa.
 */
export function pressureAt(altitude: number): number | null {
  if (!(altitude >= -500 && altitude <= 5000)) return null;
  return 101325 * (1 - (0.0065 * altitude) / 288.15) ** ((9.80665 * 0.0289644) / (8.31446 * 0.0065));
}

/** Coefficients n1 … n10 of region 4 (memory; the published verification values are reproduced). */
const N = [
  0, 1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353,
  -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
] as const;

/**
 * Boiling point of water [K] at `pascal`, IAPWS-IF97 region 4, backward. Null outside 611.213 Pa … 22.064 MPa.
 * Class S.
 */
export function boilingKelvin(pascal: number): number | null {
  if (!(pascal >= 611.213 && pascal <= 22.064e6)) return null;
  const beta = (pascal / 1e6) ** 0.25;
  const e = beta ** 2 + N[3] * beta + N[6];
  const f = N[1] * beta ** 2 + N[4] * beta + N[7];
  const g = N[2] * beta ** 2 + N[5] * beta + N[8];
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return (N[10] + d - Math.sqrt((N[10] + d) ** 2 - 4 * (N[9] + N[10] * d))) / 2;
}

export type Boiling = { pascal: number; celsius: number; fahrenheit: number };

/** Boiling point at the station pressure [Pa], not reduced to sea level. Null as `boilingKelvin`. Class S. */
export function boilingAtPressure(pascal: number): Boiling | null {
  const kelvin = boilingKelvin(pascal);
  if (kelvin === null) return null;
  const celsius = kelvin - 273.15;
  return { pascal, celsius, fahrenheit: 1.8 * celsius + 32 };
}

/**
 * Boiling point at an altitude [m] in standard weather; add a standard uncertainty of 0.5 °C for the weather. Null
 * as `pressureAt`. Class S.
 */
export function boilingAtAltitude(altitude: number): Boiling | null {
  const pascal = pressureAt(altitude);
  return pascal === null ? null : boilingAtPressure(pascal);
}

export type TwoBaths = {
  /** What the thermometer showed in ice (true 32 °F) and in boiling water (true `boils`), °F. */
  ice: number;
  boiling: number;
  boils: number;
  /** Standard uncertainties of the two true bath temperatures and of one reading. */
  uIce: number;
  uBoil: number;
  uRead: number;
};

export type Corrected = {
  gain: number;
  offset: number;
  value: number;
  /** Standard uncertainty of `value`. */
  u: number;
  /** The reading lies outside the two baths: the correction extrapolates. */
  extrapolates: boolean;
};

const ICE = 32;

/**
 * A reading corrected by two baths: gain = (boils − 32)/(R_boil − R_ice), offset = 32 − gain·R_ice; uncertainty by
 * propagation. Null when the baths read less than 50 °F apart, either is more than 10 °F off, or the gain is
 * outside 0.9 … 1.1: the probe is broken, no correction. Class S; shown beside the typed value, and the judge lets
 * the worse of the two decide.
 */
export function twoPoint(baths: TwoBaths, reading: number): Corrected | null {
  const { ice, boiling, boils, uIce, uBoil, uRead } = baths;
  if (!allFinite(ice, boiling, boils, uIce, uBoil, uRead, reading)) return null;
  if (Math.min(uIce, uBoil, uRead) < 0 || boiling - ice < 50) return null;
  if (Math.abs(ice - ICE) > 10 || Math.abs(boiling - boils) > 10) return null;
  const gain = (boils - ICE) / (boiling - ice);
  if (gain < 0.9 || gain > 1.1) return null;
  const offset = ICE - gain * ice;
  const w = (reading - ice) / (boiling - ice);
  return {
    gain,
    offset,
    value: offset + gain * reading,
    u: Math.hypot((1 - w) * uIce, w * uBoil, gain * uRead),
    extrapolates: w < 0 || w > 1,
  };
}

export type Guarded = {
  /** Chance that the truth is at or above the limit, from this reading alone. */
  pConform: number;
  decision: 'shown_at_or_above' | 'shown_below' | 'within_device_uncertainty';
  acceptanceLimit: number;
  a95: number;
};

/**
 * A reading y against a lower limit: Φ((y − L)/u), u standard; shown at or above when y − a ≥ L, shown below when
 * y + a < L, a half-width; L + a; L + 1.6448536 u (JCGM 106:2012, 7.3 and 8.3, memory). Null when u ≤ 0 or a < 0.
 * Class S (shown below, within: A). A verdict compares the value itself.
 */
export function guardBand(y: number, limit: number, a: number, u: number): Guarded | null {
  if (!allFinite(y, limit, a, u) || u <= 0 || a < 0) return null;
  const decision =
    y - a >= limit ? 'shown_at_or_above' : y + a < limit ? 'shown_below' : 'within_device_uncertainty';
  return {
    pConform: 0.5 * erfc(-(y - limit) / u / Math.SQRT2),
    decision,
    acceptanceLimit: limit + a,
    a95: limit + 1.6448536 * u,
  };
}
