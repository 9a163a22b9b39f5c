import Big from 'big.js';
import { conventions } from '#lib/limits/conventions.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import { converted, type Unit } from '#shared/units.ts';
import type { Stage } from './answer.ts';
import type { JudgedReading } from './record.ts';

/** One figure made ready for comparing: a value `>= line[unit]` lies on its upper side, a lower one below it. */
export type Line = {
  degF: number;
  degC: number;
  nearLowF: number;
  nearHighF: number;
  nearLowC: number;
  nearHighC: number;
  figure: { degF: number; degC: number };
  limit: NonNullable<Stage['limit']>;
};

const bits = new DataView(new ArrayBuffer(8));

/** The next number above a finite one, so that `> figure` can be asked as `>= next`. */
function nextAbove(value: number): number {
  if (value === 0) return Number.MIN_VALUE;
  bits.setFloat64(0, value);
  bits.setBigInt64(0, bits.getBigInt64(0) + (value > 0 ? 1n : -1n));
  return bits.getFloat64(0);
}

const plus = (value: number, more: number): number => new Big(value).plus(more).toNumber();

function build(figure: TemperatureFigure): Line {
  const { degF, degC } = figure.value;
  // A unit that the rule does not print is converted exactly, never rounded (docs/judge.md, section 2).
  const f = degF ?? converted(degC ?? 0, 'degC', 'degF');
  const c = degC ?? converted(degF ?? 0, 'degF', 'degC');
  const figureIsUpper = figure.comparison === 'at_or_above' || figure.comparison === 'below';
  const edge = (value: number): number => (figureIsUpper ? value : nextAbove(value));
  const { close } = conventions;
  return {
    degF: edge(f),
    degC: edge(c),
    nearLowF: plus(f, -close.degF),
    nearHighF: plus(f, close.degF),
    nearLowC: plus(c, -close.degC),
    nearHighC: plus(c, close.degC),
    figure: { degF: f, degC: c },
    limit: { value: figure.first === 'degF' ? f : c, unit: figure.first, comparison: figure.comparison },
  };
}

const lines = new WeakMap<TemperatureFigure, Line>();

/** The line of a figure; built once for each, for the exact decimals cost more than judging a night. */
export function line(figure: TemperatureFigure): Line {
  const known = lines.get(figure);
  if (known !== undefined) return known;
  const made = build(figure);
  lines.set(figure, made);
  return made;
}

/** Value with its correction in exact decimals. */
const corrected = (reading: JudgedReading): number => plus(reading.value, reading.correction ?? 0);

/** What counts against a figure to be held, reached or started from: the lower of typed and corrected. */
export const low = (reading: JudgedReading): number =>
  reading.correction === null ? reading.value : Math.min(reading.value, corrected(reading));

/** What counts against a figure to stay at or come below: the higher of typed and corrected. */
export const high = (reading: JudgedReading): number =>
  reading.correction === null ? reading.value : Math.max(reading.value, corrected(reading));

/**
 * Whether two values lie no more than `limit` apart, in exact decimals: as floats 128.3 − 126.3 is more than 2.
 * Only a difference within a billionth of the limit needs the decimals.
 */
export function within(a: number, b: number, limit: number): boolean {
  const apart = Math.abs(a - b);
  if (Math.abs(apart - limit) > 1e-9) return apart < limit;
  return new Big(a).minus(b).abs().lte(limit);
}

/** Whether a value lies within its probe's accuracy of the figure, on either side, the accuracy itself included. */
export function isClose(near: Line, value: number, unit: Unit, accuracy: number | null | undefined): boolean {
  if (accuracy !== null && accuracy !== undefined) return within(value, near.figure[unit], accuracy);
  return unit === 'degF'
    ? value >= near.nearLowF && value <= near.nearHighF
    : value >= near.nearLowC && value <= near.nearHighC;
}
