import { degrees } from '#shared/degrees.ts';
import type { Unit } from '#shared/units.ts';

/** "135 °F", as words in a sentence: the figure with the sign of its unit. */
export const withSign = (figure: string | number, unit: Unit): string =>
  `${String(figure).replace('-', '−')} ${degrees(unit)}`;

/** "151°", where the unit stands beside it already. */
export const short = (figure: string | number): string => `${String(figure).replace('-', '−')}°`;
