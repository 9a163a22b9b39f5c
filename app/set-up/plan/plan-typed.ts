import type { Body } from '#shared/entries/entry.ts';
import {
  listOf,
  numberOf,
  numberOrNull,
  partsOf,
  shown,
  type Typed,
  textOf,
  ticked,
  wordsOrNull,
} from '../form/typed-values.ts';

/** A plan as its form shows it; a new one looks at the coldest piece and names no place. */
export const planTyped = (known: Body<'plan'> | null): Typed => ({
  step: known?.step ?? 'hot_hold',
  equipment: known?.equipment ?? [],
  every_min: shown(known?.every_min),
  at_most_min: shown(known?.at_most_min),
  checkpoints_min: known?.checkpoints_min.join(', ') ?? '',
  looks: known?.looks ?? 'watch_piece',
  spots: known?.spots ?? [],
  note: known?.note ?? '',
  active: known?.active ?? true,
});

export const planMeant = (id: string, typed: Typed): unknown => ({
  plan: id,
  step: textOf(typed, 'step'),
  equipment: listOf(typed, 'equipment'),
  every_min: numberOrNull(typed, 'every_min'),
  at_most_min: numberOrNull(typed, 'at_most_min'),
  checkpoints_min: partsOf(typed, 'checkpoints_min').map(numberOf),
  looks: textOf(typed, 'looks'),
  spots: listOf(typed, 'spots'),
  note: wordsOrNull(typed, 'note'),
  active: ticked(typed, 'active'),
});

/** A gap allowed at most that is shorter than the interval would make every look late. */
export function atMostBelowEvery(typed: Typed): boolean {
  const [every, atMost] = [numberOrNull(typed, 'every_min'), numberOrNull(typed, 'at_most_min')];
  return typeof every === 'number' && typeof atMost === 'number' && atMost < every;
}

/** Neither an interval nor times after the start: such a plan asks for nothing. */
export const asksNothing = (typed: Typed): boolean =>
  ['every_min', 'at_most_min', 'checkpoints_min'].every((name) => textOf(typed, name) === '');
