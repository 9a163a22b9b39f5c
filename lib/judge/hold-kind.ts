import type { StepName } from '#shared/entries/step-name.ts';
import type { RuleKind } from './record.ts';

const kept: ReadonlySet<StepName> = new Set(['rest', 'service', 'transport', 'cutting']);

/**
 * The rule by which food is held while it rests, is served or is carried in a box: hot holding (docs/judge.md 4.1),
 * but cold holding where it comes from the cold. What it was before is the last step that heats, holds or cools.
 * @param earlier the batch's steps before this one, in order of time
 */
export function holdKind(earlier: readonly StepName[]): Extract<RuleKind, 'hot_hold' | 'cold_hold'> {
  const from = earlier.findLast((step) => !kept.has(step));
  return from === 'cold_hold' || from === 'cooling' ? 'cold_hold' : 'hot_hold';
}

/** The rule that judges a step; null = preparation, or the end of the food. */
export function kindOf(step: StepName, earlier: readonly StepName[]): RuleKind | null {
  switch (step) {
    case 'rest':
    case 'service':
    case 'transport':
      return holdKind(earlier);
    case 'hot_hold':
    case 'cold_hold':
    case 'cooling':
    case 'reheat':
    case 'cook':
    case 'time_control':
      return step;
    case 'cutting':
    case 'gone':
      return null;
  }
}
