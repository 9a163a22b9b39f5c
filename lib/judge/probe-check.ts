import type { Profile } from '#lib/limits/profile.ts';
import type { Unit } from '#shared/units.ts';
import { within } from './compare.ts';
import type { JudgedReading } from './record.ts';

/** A thermometer held in a bath of known temperature. `scale` both: it shows °F and °C, and is held to the °C figure. */
export type ProbeCheck = {
  expected: number;
  read: number;
  unit: Unit;
  scale: 'both' | null;
  accuracy: number | null; // in `unit`; null = the published figure of its scale
};

export type ProbeVerdict = {
  verdict: 'kept' | 'broken';
  reads: 'high' | 'low' | null; // null = exactly the expected
  accuracy: number; // what it was held to, in the check's unit
  section: string;
};

/** °F in a difference of one °C: a difference has no zero point. */
const perCelsius = 9 / 5;

/**
 * A check is kept while the probe is off by no more than its accuracy: ±2 °F on a Fahrenheit scale, ±1 °C on a
 * Celsius or a dual one, FDA Food Code 2022 4-203.11 (docs/judge.md 4.9).
 * @returns null where the profile publishes no accuracy and the check names none
 */
export function probeCheck(check: ProbeCheck, { figures }: Profile): ProbeVerdict | null {
  const figure =
    check.unit === 'degC' || check.scale === 'both' ? figures.probe_celsius : figures.probe_fahrenheit;
  const inUnit = figure !== null && figure.unit !== check.unit ? figure.value * perCelsius : figure?.value;
  const accuracy = check.accuracy ?? inUnit;
  if (accuracy === undefined) return null;
  return {
    verdict: within(check.read, check.expected, accuracy) ? 'kept' : 'broken',
    reads: check.read === check.expected ? null : check.read > check.expected ? 'high' : 'low',
    accuracy,
    section: figure?.section ?? '',
  };
}

/**
 * Indices of the readings that a failed check makes suspect: all of that probe after the last good check, or all
 * of that probe when there is none. A probe that nobody named makes none suspect.
 */
export function suspectAfter(
  readings: readonly JudgedReading[],
  probe: string | null,
  lastGoodAt: number | null,
): number[] {
  if (probe === null) return [];
  return readings.flatMap((reading, index) =>
    reading.probe === probe && (lastGoodAt === null || reading.at > lastGoodAt) ? [index] : [],
  );
}
