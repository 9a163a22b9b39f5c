/** The number, or null where a formula left the numbers: a function of this room never answers NaN or Infinity. */
export const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** True when every one is a finite number. */
export const allFinite = (...values: readonly number[]): boolean => values.every(Number.isFinite);

/** True when the numbers are finite and each is greater than the one before. */
export const increasing = (values: readonly number[]): boolean =>
  values.every((value, place) => Number.isFinite(value) && value > (values[place - 1] ?? -Infinity));
