import type { Body } from '#shared/entries/entry.ts';
import type { Spot, StepName } from '#shared/entries/step-name.ts';
import type { Kitchen } from './book.ts';

/**
 * The places that the save keys name, by food and step: thin end and thick part of a piece, the coldest place of a
 * pan, the warmest of what cools or is held cold, the coldest of a reheat.
 */
export function keysFor(step: StepName, counted: Body<'food'>['counted'] | null): Spot[] {
  switch (step) {
    case 'hot_hold':
    case 'rest':
    case 'service':
    case 'transport':
      return counted === 'pieces' ? ['edge', 'core'] : ['coldest'];
    case 'cooling':
    case 'cold_hold':
      return ['warmest'];
    case 'reheat':
      return ['coldest'];
    case 'cook':
      return counted === 'pieces' ? ['core', 'edge'] : ['coldest'];
    default:
      return [];
  }
}

/** Places whose air is read on a round: it proves nothing about the food and shows trouble early. */
const airOf: ReadonlySet<Body<'equipment'>['kind']> = new Set(['pit', 'heated_cabinet', 'cooler']);

/** Whether a round reads the air of this place: by the plan's spots, else by what it is. */
export function asksAir(
  kitchen: Kitchen,
  equipment: string,
  plans: readonly (Body<'plan'> | null)[],
): boolean {
  if (plans.some((plan) => plan?.spots.includes('air'))) return true;
  const kind = kitchen.equipment.get(equipment)?.kind;
  return kind !== undefined && airOf.has(kind);
}

/** Which of a piece's keys the plan asks for; `place` = its place in the group, from 0. */
export function askedOf(keys: readonly Spot[], plan: Body<'plan'> | null, place: number): Spot[] {
  const [first] = keys;
  if (first === undefined) return [];
  const named = keys.filter((spot) => plan?.spots.includes(spot));
  if (plan?.looks !== 'thin_ends_and_every_second_thick') return named.length > 0 ? named : [first];
  // Every thin end, and the thick part of the first, third, fifth piece.
  return keys.filter((spot) => spot !== 'core' || place % 2 === 0);
}
