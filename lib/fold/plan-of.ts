import type { Body } from '#shared/entries/entry.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import type { Kitchen } from './book.ts';

type Plan = Body<'plan'>;

const named = (plan: Plan, equipment: string | null): boolean =>
  equipment !== null && plan.equipment.includes(equipment);

/**
 * The house's plan for a step in a place: the plan of this step that names the place, else the plan of this step
 * that names none. A service line in a place that has a plan of hot holding is looked at by that plan.
 */
export function planOf(kitchen: Kitchen, step: StepName, equipment: string | null): Plan | null {
  const active = [...kitchen.plans.values()].filter((plan) => plan.active);
  const own = active.filter((plan) => plan.step === step);
  const held = step === 'service' ? active.filter((plan) => plan.step === 'hot_hold') : [];
  return (
    own.find((plan) => named(plan, equipment)) ??
    own.find((plan) => plan.equipment.length === 0) ??
    held.find((plan) => named(plan, equipment)) ??
    null
  );
}
