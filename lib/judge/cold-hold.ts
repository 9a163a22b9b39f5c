import type { Profile } from '#lib/limits/profile.ts';
import type { Stages } from './answer.ts';
import type { Judged } from './combine.ts';
import { coldTo, noFigureCold } from './held-to.ts';
import { holdPass } from './hold-pass.ts';
import { heldAtReadings, withoutFigure } from './hold-stages.ts';
import { housePlan } from './house-plan.ts';
import type { StepRecord } from './record.ts';

/**
 * Cold holding, 3-501.16(A)(2) by docs/judge.md 4.5: hot holding in a mirror, at or below the figure and without an
 * allowance. Kept says: at each moment when this food was read the place read was at or below the limit.
 */
export function coldHold(record: StepRecord, profile: Profile, asked: 'step' | 'pieces'): Judged {
  const to = coldTo(profile);
  const pass = holdPass(record, to ?? noFigureCold);
  const plan = housePlan(record, pass.seen, pass.looks);
  const whole: Stages = plan === null ? {} : { house_plan_interval: plan };
  if (to === null) return withoutFigure(whole);
  const judged = heldAtReadings(record, to, pass, asked);
  return { ...judged, whole: { ...judged.whole, ...whole } };
}
