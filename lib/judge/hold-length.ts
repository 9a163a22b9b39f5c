import type { Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Stage } from './answer.ts';
import type { Span } from './evidence.ts';
import type { StepRecord } from './record.ts';
import { blankStage } from './stage.ts';

/**
 * Where a text says how long food may be held hot at most. Kept says: from its start to its end the hold was no
 * longer. Without a start the first reading stands for it in a broken verdict only: the hold may be older.
 */
export function holdLength(
  record: StepRecord,
  seen: Span,
  within: NonNullable<Profile['figures']['hot_hold_at_most']>,
): Stage {
  const stage: Stage = { ...blankStage(within.section), limit_min: within.minutes };
  const goesOn = seen.end === null;
  if (seen.start === null) return { ...stage, open: goesOn, reasons: ['start_unknown'] };
  const length = minutesBetween(seen.start, seen.until);
  const isKnown = record.start !== null;
  const fits = within.comparison === 'less_than' ? length < within.minutes : length <= within.minutes;
  const deadline = isKnown ? seen.start + within.minutes * 60_000 : null;
  const timed: Stage = {
    ...stage,
    longest_min: isKnown && !goesOn ? length : null,
    shortest_min: Math.max(0, length),
    deadline,
    remaining_min: deadline === null ? null : minutesBetween(record.asOf, deadline),
  };
  if (!fits) return { ...timed, verdict: 'broken', next: { action: 'stop_and_tag', by: null } };
  if (!isKnown) return { ...timed, open: false, reasons: ['start_unknown'] };
  if (!goesOn) return { ...timed, verdict: 'kept' };
  return { ...timed, open: true, reasons: ['not_reached'], next: { action: 'use_by', by: deadline } };
}
