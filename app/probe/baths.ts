import type { Unit } from '#shared/units.ts';

/** Melting ice in water, stirred: the ice point at any height a kitchen stands at. Common practice; physics. */
export const icePoint: Record<Unit, number> = { degF: 32, degC: 0 };

export type Bath = 'ice' | 'boiling' | 'reference';
export const baths: readonly Bath[] = ['ice', 'boiling', 'reference'];

/** What the bath should read, where it is known without asking: boiling depends on the height, so it is asked for. */
export const expectedOf = (bath: Bath, unit: Unit): string => (bath === 'ice' ? String(icePoint[unit]) : '');
