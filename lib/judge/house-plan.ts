import { minutesBetween } from '#shared/time.ts';
import type { Stage } from './answer.ts';
import type { Span } from './evidence.ts';
import type { StepRecord } from './record.ts';
import { blankStage } from './stage.ts';

/** The kitchen's own plan is no published rule, and blocks no food. */
const section = 'house plan';

/**
 * Whether the kitchen looked as often as it planned to (docs/judge.md 4.1). Exactly the interval keeps the plan.
 * @param longestGap ms without a look, a proving reading of any piece, from the step's start to its end or as_of
 * @param lastLook ms; the step's start while there was none
 * @returns null where no interval is asked
 */
export function housePlan(
  record: StepRecord,
  seen: Span,
  { longestGap, lastLook }: { longestGap: number; lastLook: number },
): Stage | null {
  const interval = record.planIntervalMin;
  if (interval === null) return null;
  const goesOn = seen.end === null;
  const stage: Stage = { ...blankStage(section), limit_min: interval };
  if (seen.start === null) return { ...stage, open: goesOn, reasons: ['no_reading'], longest_gap_min: null };
  const longestMin = minutesBetween(0, longestGap);
  const broken = longestMin > interval;
  return {
    ...stage,
    verdict: broken ? 'broken' : 'kept',
    open: goesOn && !broken,
    next: goesOn ? { action: 'look_by_plan', by: lastLook + interval * 60_000 } : null,
    longest_gap_min: longestMin,
  };
}
