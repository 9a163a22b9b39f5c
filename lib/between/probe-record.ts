import type { Book, Check, Look } from '#lib/fold/book.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { type Boiling, boilingAtAltitude, type Corrected, twoPoint } from '#lib/science/thermometer.ts';
import type { Body } from '#shared/entries/entry.ts';
import { converted, type Unit } from '#shared/units.ts';
import { hour } from './readings.ts';

type AccuracyFigure = NonNullable<Profile['figures']['probe_celsius']>;

/** A check as a chart shows it: how far off it read, in the thermometer's unit. */
export type CheckPoint = { check: Check; at: number; off: number };

/** How far this thermometer may be off, in its own unit; `figure` null = its maker's, beside no published one. */
export type Allowed = { value: number; figure: AccuracyFigure | null; ofMaker: boolean };

/** Difference in °F as one in `unit`: it has no zero point. */
const difference = (value: number, from: Unit, to: Unit): number =>
  from === to ? value : from === 'degC' ? value * 1.8 : value / 1.8;

/** Checks in order of time, as differences from what they should have read. */
export const checkPoints = (checks: readonly Check[], unit: Unit): CheckPoint[] =>
  checks.map((check) => {
    const { value, expected, unit: own } = check.entry.body;
    return { check, at: check.at, off: difference(value - expected, own, unit) };
  });

/** By its scale: ±2 °F on Fahrenheit, ±1 °C on Celsius or both, unless its maker says another. Null: no figure. */
export function allowedOf(probe: Body<'probe'>, profile: Profile | null): Allowed | null {
  const figures = profile?.figures;
  const celsius = probe.scale !== 'degF';
  const figure = (celsius ? figures?.probe_celsius : figures?.probe_fahrenheit) ?? null;
  if (probe.accuracy !== null) return { value: probe.accuracy, figure, ofMaker: true };
  return figure === null
    ? null
    : { value: difference(figure.value, figure.unit, probe.unit), figure, ofMaker: false };
}

/** A correction is worked out from two checks no further apart than this: common practice. */
const TOGETHER_DAYS = 31;
/** Standard uncertainties, °F: a stirred ice bath; boiling water at a height in any weather, or by a table; a reading. */
const UNCERTAIN = { ice: 0.2, boiling: 0.9 } as const;

export type TwoBathsFound = {
  ice: Check;
  boiling: Check;
  /** °F: what it should have read in boiling water, and the standard uncertainties that went in. */
  boils: number;
  uIce: number;
  uBoil: number;
  uRead: number;
  /** At so many °F on the thermometer; null = broken: baths too near, too far off. */
  at: number;
  corrected: Corrected | null;
};

/** What the last ice and the last boiling check say of a reading of `at` °F. Null: one of the two is missing or too old. */
export function byTwoBaths(checks: readonly Check[], probe: Body<'probe'>, at: number): TwoBathsFound | null {
  const last = (bath: Body<'probe_check'>['bath']): Check | undefined =>
    checks.findLast(({ entry }) => entry.body.bath === bath);
  const [ice, boiling] = [last('ice'), last('boiling')];
  if (ice === undefined || boiling === undefined) return null;
  if (Math.abs(ice.at - boiling.at) > TOGETHER_DAYS * 24 * hour) return null;
  const inF = ({ entry: { body } }: Check, value: number): number => converted(value, body.unit, 'degF');
  const uRead = difference(probe.step, probe.unit, 'degF') / Math.sqrt(12);
  const baths = {
    ice: inF(ice, ice.entry.body.value),
    boiling: inF(boiling, boiling.entry.body.value),
    boils: inF(boiling, boiling.entry.body.expected),
    uIce: Math.hypot(UNCERTAIN.ice, uRead),
    uBoil: Math.hypot(UNCERTAIN.boiling, uRead),
    uRead,
  };
  const { boils, uIce, uBoil } = baths;
  return { ice, boiling, boils, uIce, uBoil, uRead, at, corrected: twoPoint(baths, at) };
}

/** The figure of a hot hold, °F: where a correction matters most. */
export const HOLD = 135;

/** Degrees that two baths say should be added near 135 °F, in the thermometer's unit, to a tenth; null = not known. */
export function suggestedBy(checks: readonly Check[], probe: Body<'probe'>): number | null {
  const corrected = byTwoBaths(checks, probe, HOLD)?.corrected ?? null;
  return corrected === null
    ? null
    : Number(difference(corrected.value - HOLD, 'degF', probe.unit).toFixed(1));
}

/** Boiling water at the kitchen's height, in standard weather; null = no height is set up, or out of range. */
export const boilingHere = (book: Pick<Book, 'kitchen'>): (Boiling & { altitude: number }) | null => {
  const altitude = book.kitchen.site?.altitude_m ?? null;
  const found = altitude === null ? null : boilingAtAltitude(altitude);
  return altitude === null || found === null ? null : { ...found, altitude };
};

/** Readings that a failed check makes suspect, newest first, as far as this book has them. */
export const suspectLooks = (book: Pick<Book, 'looks'>, check: Check): Look[] =>
  check.suspect.flatMap((id) => book.looks.get(id) ?? []).sort((a, b) => b.at - a.at);
