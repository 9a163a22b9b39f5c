import type { Unit } from '#shared/units.ts';
import { type Dress, Figure } from './Figure.tsx';

/** A reading in a table. */
export function Cell({ typed, unit, dress = 'solid' }: { typed: string; unit: Unit; dress?: Dress }) {
  return <Figure typed={typed} unit={unit} dress={dress} size="cell" />;
}
