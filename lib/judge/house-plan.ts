import type { Figures } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Action, Stage } from './answer.ts';
import type { Span } from './evidence.ts';
import type { StepRecord } from './record.ts';
import { blankStage } from './stage.ts';

/** The kitchen's own plan is no published rule, and blocks no food. */
const section = 'house plan';

/** Looks at any piece. Without one: the longest stretch in ms, the step's start and its end or as_of included. */
type Looks = { longestGap: number; lastLook: number };

/**
 * Whether the kitchen looked as often as it planned to (docs/judge.md 4.1). Exactly the interval keeps the plan.
 * @returns null where no interval is asked
 */
export function housePlan(record: StepRecord, seen: Span, looks: Looks): Stage | null {
  const minutes = record.planIntervalMin;
  return minutes === null
    ? null
    : interval(seen, looks, { minutes, strict: false, section, action: 'look_by_plan' });
}

/** The same where a published text sets how often held food is read and written; its section is the text's. */
export const recordInterval = (
  seen: Span,
  looks: Looks,
  every: NonNullable<Figures['record_hot_every']>,
): Stage =>
  interval(seen, looks, {
    minutes: every.minutes,
    strict: every.comparison === 'less_than',
    section: every.section,
    action: 'look_by_rule',
  });

type Asked = { minutes: number; strict: boolean; section: string; action: Action };

function interval(seen: Span, { longestGap, lastLook }: Looks, asked: Asked): Stage {
  const goesOn = seen.end === null;
  const stage: Stage = { ...blankStage(asked.section), limit_min: asked.minutes };
  if (seen.start === null) return { ...stage, open: goesOn, reasons: ['no_reading'], longest_gap_min: null };
  const longestMin = minutesBetween(0, longestGap);
  const broken = asked.strict ? longestMin >= asked.minutes : longestMin > asked.minutes;
  return {
    ...stage,
    verdict: broken ? 'broken' : 'kept',
    open: goesOn && !broken,
    next: goesOn ? { action: asked.action, by: lastLook + asked.minutes * 60_000 } : null,
    longest_gap_min: longestMin,
  };
}
