import { boilingAtAltitude, boilingAtPressure } from '#lib/science/thermometer.ts';
import type { Unit } from '#shared/units.ts';

/** Melting ice in water, stirred: the ice point at any height a kitchen stands at. Common practice; physics. */
export const icePoint: Record<Unit, number> = { degF: 32, degC: 0 };

export type Bath = 'ice' | 'boiling' | 'reference';
export const baths: readonly Bath[] = ['ice', 'boiling', 'reference'];

/**
 * What the bath should read, where it is known without asking. Boiling depends on the height: at the site's it is
 * the boiling point of water in standard weather, to a tenth of a degree, and stays open to the hand's own table.
 * @param altitudeM height of the kitchen above the sea, m; null = not set up
 */
export function expectedOf(bath: Bath, unit: Unit, altitudeM: number | null): string {
  if (bath === 'ice') return String(icePoint[unit]);
  const boils = bath === 'boiling' && altitudeM !== null ? boilingAtAltitude(altitudeM) : null;
  if (boils === null) return '';
  return (unit === 'degF' ? boils.fahrenheit : boils.celsius).toFixed(1);
}

/** Pressures at which people cook, Pa: from 3000 m in foul weather to a deep valley in fine. */
const LEAST_PASCAL = 66_000;
const MOST_PASCAL = 106_000;
const PASCAL_PER_INCH = 3386.389;

/**
 * What boiling water should read by a barometer at the place: typed in hPa, or in inches of mercury (under 40).
 * Null: it is no pressure of a kitchen.
 */
export function boilsByBarometer(typed: number, unit: Unit): string | null {
  const pascal = typed < 40 ? typed * PASCAL_PER_INCH : typed * 100;
  const boils = pascal >= LEAST_PASCAL && pascal <= MOST_PASCAL ? boilingAtPressure(pascal) : null;
  return boils === null ? null : (unit === 'degF' ? boils.fahrenheit : boils.celsius).toFixed(1);
}
