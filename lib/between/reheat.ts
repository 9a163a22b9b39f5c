import { profileOf } from '#lib/fold/ask.ts';
import type { Book } from '#lib/fold/book.ts';
import type { CoolingOutlook } from './cooling.ts';

/**
 * Heating again and cooling anew, once, while the first stage is not over: common practice and no published rule
 * (the code gives no second chance by its text), so the house plan and the local code have to allow it.
 */
export type ReheatWay = {
  /** In the oven by then: begun, not finished. */
  startBy: number;
  /** °F that every part has to reach, within `withinMin` of the start; null: the profile has no figure. */
  to: { value: number; unit: 'degF' | 'degC' } | null;
  section: string | null;
  withinMin: number | null;
};

/** Null: no first stage is open, its deadline is not known, or it is over. */
export function reheatWay(book: Book, { targets }: Pick<CoolingOutlook, 'targets'>): ReheatWay | null {
  const first = targets.find(({ stage }) => stage === 'stage_1');
  if (first === undefined || first.deadline === null || first.deadline <= book.asOf) return null;
  const figures = profileOf(book)?.figures;
  const target = figures?.reheat_conventional?.target ?? null;
  const value = target === null ? null : (target.value[target.first] ?? null);
  return {
    startBy: first.deadline,
    to: target === null || value === null ? null : { value, unit: target.first },
    section: target?.section ?? null,
    withinMin: figures?.reheat_within?.minutes ?? null,
  };
}
