import Big from 'big.js';
import * as z from 'zod';

export const unit = z.enum(['degF', 'degC']);
export type Unit = z.infer<typeof unit>;

/** A temperature with its unit: never a bare number. `value` is a decimal as people type it. */
export const temperature = z.strictObject({ value: z.number(), unit });

export { degrees } from './degrees.ts';

/** Exact conversion (×9/5 + 32) in decimals, unrounded: 57 °C is 134.6 °F, not 134.60000000000002. */
export function converted(value: number, from: Unit, to: Unit): number {
  if (from === to) return value;
  const exact =
    from === 'degC' ? new Big(value).times(9).div(5).plus(32) : new Big(value).minus(32).times(5).div(9);
  return exact.toNumber();
}
