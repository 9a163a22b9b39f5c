import { wallClock } from '#shared/time.ts';
import { converted, degrees, type Unit } from '#shared/units.ts';

/** How this page says figures, moments and lengths. */
export type CabinetView = {
  name: string;
  unit: Unit;
  zone: string;
  clock: '12' | '24';
  locale: 'en' | 'es';
  now: number;
};

/** °F in the kitchen's unit, to a tenth. */
export const shownIn = (view: CabinetView, degF: number): number =>
  Number(converted(degF, 'degF', view.unit).toFixed(1));

export const figureOf = (view: CabinetView, degF: number): string =>
  `${shownIn(view, degF)}\u00a0${degrees(view.unit)}`;

/** A difference, which has no zero point, with its sign. */
export function differenceOf(view: CabinetView, degF: number, signed = false): string {
  const value = Number((view.unit === 'degF' ? degF : degF / 1.8).toFixed(2));
  return `${signed && value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value)}\u00a0${degrees(view.unit)}`;
}

/** "12 Nov, 02:10": these pages look back further than a weekday says. */
export const momentOf = (view: CabinetView, ms: number): string =>
  `${dayOf(view, ms)}, ${wallClock(ms, view.zone, view.clock)}`;

export const dayOf = (view: CabinetView, ms: number): string =>
  new Intl.DateTimeFormat(view.locale, {
    timeZone: view.zone,
    day: 'numeric',
    month: 'short',
    // A year only where it is another one.
    ...(Math.abs(ms - view.now) > 180 * 86_400_000 ? { year: 'numeric' as const } : {}),
  }).format(ms);
