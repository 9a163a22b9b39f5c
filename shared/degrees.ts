import type { Unit } from './units.ts';

/** The sign behind a figure: "°F" or "°C". Alone in its file: a phone that shows figures need not load the schemas. */
export const degrees = (u: Unit): string => (u === 'degF' ? '°F' : '°C');
