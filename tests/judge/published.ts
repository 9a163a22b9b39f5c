import type { Comparison } from '#lib/judge/answer.ts';
import type { Unit } from '#shared/units.ts';

/**
 * What a published figure asks, worked out here in whole tenths of a degree and whole seconds and nowhere near the
 * judge: the pair as printed, or in a unit that is not printed its exact conversion.
 */
export type Pair = { degF: number | null; degC: number | null };

export const units: readonly Unit[] = ['degF', 'degC'];

/** A figure with one decimal as a whole number of tenths; a figure with more decimals stops the test. */
export function tenths(value: number): number {
  const whole = Math.round(value * 10);
  if (Math.abs(whole - value * 10) > 1e-6) throw new Error(`${value} has more than one decimal`);
  return whole;
}

/** Twice-exact: the figure in tenths times a whole number, so that no division is made. */
function scaled(pair: Pair, unit: Unit): { times: number; figure: number } {
  const own = pair[unit];
  if (own !== null) return { times: 1, figure: tenths(own) };
  const other = tenths((unit === 'degF' ? pair.degC : pair.degF) ?? Number.NaN);
  // F = 9/5 C + 32, so 5 F = 9 C + 160; in tenths + 1600. And 9 C = 5 F − 160.
  return unit === 'degF' ? { times: 5, figure: 9 * other + 1600 } : { times: 9, figure: 5 * other - 1600 };
}

const keepsBy: Record<Comparison, (sign: number) => boolean> = {
  at_or_above: (sign) => sign >= 0,
  above: (sign) => sign > 0,
  at_or_below: (sign) => sign <= 0,
  below: (sign) => sign < 0,
};

type Figure = { value: Pair; comparison: Comparison };

/** Whether a value of so many tenths keeps the figure. */
export function keeps({ value, comparison }: Figure, unit: Unit, ofTenths: number): boolean {
  const { times, figure } = scaled(value, unit);
  return keepsBy[comparison](Math.sign(times * ofTenths - figure));
}

/** Tenths just below the figure, exactly at it where a tenth is, and just above. */
export function around(pair: Pair, unit: Unit): number[] {
  const { times, figure } = scaled(pair, unit);
  const exact = figure / times;
  return [Math.ceil(exact) - 1, ...(figure % times === 0 ? [exact] : []), Math.floor(exact) + 1];
}

/** The figure in °F, for a helping reading that lies far from it. */
export const roughly = (pair: Pair): number => {
  const { times, figure } = scaled(pair, 'degF');
  return figure / times / 10;
};

/** One second less than the figure, exactly it, one second more. */
export const secondsAround = (minutes: number): number[] => [
  minutes * 60 - 1,
  minutes * 60,
  minutes * 60 + 1,
];

/** Whether so many seconds keep a limit of time. */
export const inTime = (
  { minutes, comparison }: { minutes: number; comparison: 'at_most' | 'less_than' },
  seconds: number,
): boolean => (comparison === 'at_most' ? seconds <= minutes * 60 : seconds < minutes * 60);
