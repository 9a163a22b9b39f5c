import type { Book } from './book.ts';
import { figuresAsked, openRound, roundDue } from './round-due.ts';
import { roundLooks } from './round-looks.ts';
import type { RoundPlan } from './views.ts';

export { figuresAsked, openRound, roundDue };

/**
 * What a round asks, in the order of the walk.
 * @param round id of the round that is walked: what it has read is not asked again. Missing = the round that was
 *   begun and not ended, if there is one; null = a new round
 */
export function roundPlan(book: Book, round?: string | null): RoundPlan {
  const looks = roundLooks(book, round === undefined ? (openRound(book)?.body.round ?? null) : round);
  const byPlace = Map.groupBy(looks, ({ equipment }) => equipment);
  return {
    looks,
    equipment: [...byPlace].map(([id, own]) => ({
      id,
      name: own[0]?.equipmentName ?? id,
      looks: figuresAsked(own),
    })),
    due: roundDue(book),
  };
}
