import Big from 'big.js';
import type { Unit } from '#shared/units.ts';

/** Kitchens that read °F know their height in feet. Exactly 0.3048 m (international foot). */
const metresInFoot = new Big('0.3048');

export type HeightUnit = 'ft' | 'm';
export const heightUnitOf = (unit: Unit): HeightUnit => (unit === 'degF' ? 'ft' : 'm');

/** Metres as they are shown: feet rounded to whole ones. */
export const heightShown = (metres: number | null, unit: HeightUnit): string =>
  metres === null
    ? ''
    : unit === 'm'
      ? String(metres)
      : new Big(metres).div(metresInFoot).round(0).toString();

/** What was typed, in metres to a tenth. Words that are no number stay: the schema names them. */
export const heightMeant = (typed: number | string | null, unit: HeightUnit): number | string | null =>
  typeof typed !== 'number' || unit === 'm' ? typed : new Big(typed).times(metresInFoot).round(1).toNumber();
