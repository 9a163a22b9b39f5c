import type { Profile } from '#lib/limits/profile.ts';
import type { Stages } from './answer.ts';
import type { Judged } from './combine.ts';
import { heldTo, noFigureHot } from './held-to.ts';
import { holdLength } from './hold-length.ts';
import { holdPass } from './hold-pass.ts';
import { heldAtReadings, withoutFigure } from './hold-stages.ts';
import { housePlan, recordInterval } from './house-plan.ts';
import type { StepRecord } from './record.ts';

/**
 * Hot holding, FDA Food Code 2022 3-501.16(A)(1) by docs/judge.md 4.1; also for rest, service and transport. Kept
 * says: at each moment when this food was read the place read was at or above the limit. Between two looks it
 * says nothing; `between_readings` speaks of a logger, `house_plan_interval` of the kitchen's own plan.
 */
export function hotHold(record: StepRecord, profile: Profile, asked: 'step' | 'pieces'): Judged {
  const { figures } = profile;
  const to = heldTo(record, profile);
  const pass = holdPass(record, to ?? noFigureHot);
  const whole: Stages = {};
  const plan = housePlan(record, pass.seen, pass.looks);
  if (plan !== null) whole.house_plan_interval = plan;
  const { record_hot_every: every, hot_hold_at_most: atMost, hot_hold_defences: defences } = figures;
  if (every !== null) whole.record_interval = recordInterval(pass.seen, pass.looks, every);
  if (atMost !== null) whole.hold_length = holdLength(record, pass.seen, atMost);
  if (to === null) return withoutFigure(whole);
  const judged = heldAtReadings(record, to, pass, asked);
  if (defences.length > 0) nameDefences(judged, defences);
  return { ...judged, whole: { ...judged.whole, ...whole } };
}

/**
 * Exceptions that the business has to prove are named beside a broken hold, and soften nothing. The stages are this
 * judgement's own, so they are written to.
 */
function nameDefences({ byPiece }: Judged, defences: Profile['figures']['hot_hold_defences']): void {
  const ids = defences.map(({ id }) => id);
  for (const { stages } of byPiece)
    if (stages.at_readings?.verdict === 'broken') stages.at_readings.defences = ids;
}
