import { type CoolingAdvice, coolingAdvice } from '#lib/judge/cooling-methods.ts';
import type { Profile } from '#lib/limits/profile.ts';

/** What the limits in force say to a hand that begins a step: the figures that its questions name. */
export type StepRules = {
  /** Time instead of temperature: how long it may stay out; null = these limits have no such way. */
  timeControl: { section: string; fourHoursMin: number | null; sixHoursMin: number | null } | null;
  cooling: CoolingAdvice | null;
  /** Calendar days that cold food may be kept, its first day counted; null = no figure. */
  dateMark: { section: string; days: number } | null;
};

export function stepRules(profile: Profile | null): StepRules {
  if (profile === null) return { timeControl: null, cooling: null, dateMark: null };
  const { time_control: time, date_mark: mark } = profile.figures;
  return {
    timeControl: time && {
      section: time.marking.section,
      fourHoursMin: time.four_hours?.within.minutes ?? null,
      sixHoursMin: time.six_hours?.within.minutes ?? null,
    },
    cooling: coolingAdvice(profile),
    dateMark: mark && { section: mark.days.section, days: mark.days.days },
  };
}

/** Minutes that food may be out by a way of the rule; null = these limits do not know the way. */
export const minutesOut = ({ timeControl }: StepRules, mode: '4h' | '6h'): number | null =>
  (mode === '6h' ? timeControl?.sixHoursMin : timeControl?.fourHoursMin) ?? null;

/**
 * By when food that left its temperature at `at` (ms) must be served or thrown away, to the whole minute before: a
 * mark on the food has no seconds, and a later one is not the mark that is asked. null = no figure.
 */
export function outBy(rules: StepRules, mode: '4h' | '6h', at: number): number | null {
  const minutes = minutesOut(rules, mode);
  return minutes === null ? null : Math.floor(at / 60_000 + minutes) * 60_000;
}
