import type { Figures } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { line } from './compare.ts';
import type { StepRecord } from './record.ts';

/** Whole pieces of meat, whose thickness in one dimension counts; every other food is a layer. */
const wholePieces: ReadonlySet<FoodClass> = new Set(['intact_roast', 'beef_whole', 'pork_whole']);

/**
 * Whether the record shows that the food was cooled by a method without a clock (docs/judge.md 4.2; Washington):
 * uncovered and protected, in cold air, in a thin layer or as a thin whole piece. One condition that nobody noted,
 * and the clock counts.
 */
export function isUntimed({ food, facts }: StepRecord, rule: Figures['cooling_untimed']): boolean {
  if (rule === null || facts.ingredients === 'ambient' || facts.uncovered_protected !== true) return false;
  const { unit_air: air, layer_in: layer, intact_in: intact } = facts;
  if (air === null || air === undefined || air >= line(rule.air).degF) return false;
  const isThin = layer !== null && layer !== undefined && layer <= rule.layer_in;
  const isThinPiece =
    wholePieces.has(food.class) && intact !== null && intact !== undefined && intact <= rule.intact_in;
  return isThin || isThinPiece;
}
