import type { Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Reason, Stage } from './answer.ts';
import { type Brackets, bracketed } from './brackets.ts';
import type { Line } from './compare.ts';
import { naturalHeated } from './evidence.ts';
import type { StepRecord } from './record.ts';
import { blankStage, sorted } from './stage.ts';

/** A warming between two figures: its clock, and the readings that decide at its end. */
type Warming = {
  record: StepRecord;
  goesOn: boolean;
  target: Line;
  within: NonNullable<Profile['figures']['reheat_within']>;
  brackets: Brackets;
  reached: readonly number[]; // readings of the look at which it was at the target
  below: readonly number[]; // readings of the last look before that was below it
};

/**
 * How long a food took from one figure up to another (docs/judge.md 4.3, time; 4.4, come-up): verdict, lengths and
 * deadline. `reasons`: what else is to be said.
 */
export function warmingTime(warming: Warming, reasons: readonly Reason[]): Stage {
  const { record, goesOn, target, within, brackets, reached, below } = warming;
  const result = bracketed(brackets, within.minutes, within.comparison === 'less_than');
  const { verdict, deadline } = result;
  const rests = verdict === 'kept' ? reached : verdict === 'broken' ? below : [];
  const all: Reason[] = [...reasons, ...result.reasons];
  if (rests.length > 0 && !rests.some((index) => naturalHeated(record.readings[index]?.spot ?? null)))
    all.push('spot_not_natural');
  const inTime = deadline !== null && (record.asOf <= deadline || brackets.sHi === null);
  const open = goesOn && verdict === 'not_shown' && brackets.mHi === null && inTime;
  const reach: Stage['next'] = open ? { action: 'reach_target', by: deadline } : null;
  return {
    ...blankStage(within.section),
    verdict,
    open,
    limit: target.limit,
    limit_min: within.minutes,
    longest_min: result.longest_min,
    shortest_min: result.shortest_min,
    deadline,
    remaining_min: deadline === null ? null : minutesBetween(record.asOf, deadline),
    reasons: sorted(all),
    next: verdict === 'broken' ? { action: 'stop_and_tag', by: null } : reach,
    rests_on: [...rests],
  };
}
