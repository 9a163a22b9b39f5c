import { minutesBetween } from '#shared/time.ts';
import type { Stage } from './answer.ts';
import { provesHot, type Span } from './evidence.ts';
import type { StepRecord } from './record.ts';
import { blankStage } from './stage.ts';

/** The kitchen's own plan is no published rule: it decides no exit status by itself and blocks no food. */
const section = 'house plan';

type Gap = { longest: number; last: number | null };

/** Longest stretch (ms) without a look, a proving reading of any piece, from the step's start to `until`. */
function longestGap(record: StepRecord, seen: Span, start: number): Gap {
  let last = start;
  let longest = 0;
  let looked = false;
  for (let place = seen.first; place < seen.stop; place++) {
    const reading = record.readings[seen.order === null ? place : (seen.order[place] ?? 0)];
    if (reading === undefined || reading.suspect || !provesHot(reading.spot)) continue;
    longest = Math.max(longest, reading.at - last);
    last = reading.at;
    looked = true;
  }
  return { longest: Math.max(longest, seen.until - last), last: looked ? last : null };
}

/** Null: no interval is asked. Exactly the interval keeps the plan. */
export function housePlan(record: StepRecord, seen: Span): Stage | null {
  const interval = record.planIntervalMin;
  if (interval === null) return null;
  const goesOn = seen.end === null;
  const stage: Stage = { ...blankStage(section), limit_min: interval };
  if (seen.start === null) return { ...stage, open: goesOn, reasons: ['no_reading'], longest_gap_min: null };
  const gap = longestGap(record, seen, seen.start);
  const longestMin = minutesBetween(0, gap.longest);
  const broken = longestMin > interval;
  const by = (gap.last ?? seen.start) + interval * 60_000;
  return {
    ...stage,
    verdict: broken ? 'broken' : 'kept',
    open: goesOn && !broken,
    next: goesOn ? { action: 'look_by_plan', by } : null,
    longest_gap_min: longestMin,
  };
}
