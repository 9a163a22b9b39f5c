import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { CoolingStage, Profile } from '#lib/limits/profile.ts';
import { type LimitsRole, limitsRoles } from '#shared/entries/limits.ts';
import { type StageRole, stageOf } from './limits-direction.ts';

type TimeFigure = CoolingStage['within'];

/** What is typed for a figure: degrees, minutes, seconds, or only that an allowance is not used. */
export type Measure = 'degrees' | 'minutes' | 'seconds' | 'off';

/**
 * A figure of a published profile that a kitchen can set itself, as it is published. `degrees` and `time` null: nothing
 * is published there, and a figure of the house's own is stricter than nothing.
 */
export type Changeable = {
  role: LimitsRole;
  measure: Measure;
  degrees: TemperatureFigure | null;
  time: TimeFigure | null;
  seconds: number | null; // beside `degrees`: how long it is held
};

type Published = Omit<Changeable, 'role'> | null; // null = there is nothing to change

const ofDegrees = (degrees: TemperatureFigure | null): Published => ({
  measure: 'degrees',
  degrees,
  time: null,
  seconds: null,
});
const ofMinutes = (time: TimeFigure | null): Published => ({
  measure: 'minutes',
  degrees: null,
  time,
  seconds: null,
});

/** A stage of cooling can be changed where the profile has it. */
function ofStage(profile: Profile, name: StageRole, part: 'to' | 'within'): Published {
  const stage = stageOf(profile, name);
  if (stage === null) return null;
  return part === 'to' ? ofDegrees(stage.to) : ofMinutes(stage.within);
}

const published: Record<LimitsRole, (profile: Profile) => Published> = {
  hot_hold: ({ figures }) => ofDegrees(figures.hot_hold),
  hot_hold_roast: ({ figures: { hot_hold_roast: roast } }) =>
    roast && { measure: 'off', degrees: roast, time: null, seconds: null },
  hot_hold_at_most: ({ figures }) => ofMinutes(figures.hot_hold_at_most),
  record_hot_every: ({ figures }) => ofMinutes(figures.record_hot_every),
  cold_hold: ({ figures }) => ofDegrees(figures.cold_hold),
  stage_1_to: (profile) => ofStage(profile, 'stage_1', 'to'),
  stage_1_within: (profile) => ofStage(profile, 'stage_1', 'within'),
  stage_2_to: (profile) => ofStage(profile, 'stage_2', 'to'),
  stage_2_within: (profile) => ofStage(profile, 'stage_2', 'within'),
  total_to: (profile) => ofStage(profile, 'total', 'to'),
  total_within: (profile) => ofStage(profile, 'total', 'within'),
  ambient_total_to: (profile) => ofStage(profile, 'ambient_total', 'to'),
  ambient_total_within: (profile) => ofStage(profile, 'ambient_total', 'within'),
  reheat_target: ({ figures: { reheat_conventional: route } }) => route && ofDegrees(route.target),
  reheat_held: ({ figures: { reheat_conventional: route } }) =>
    route && { measure: 'seconds', degrees: route.target, time: null, seconds: route.held_s },
  reheat_within: ({ figures: { reheat_within: within } }) => within && ofMinutes(within),
};

/** One figure as it is published; null where the profile has nothing that could be changed. */
export function changeableFigure(profile: Profile, role: LimitsRole): Changeable | null {
  const found = published[role](profile);
  return found && { role, ...found };
}

/** Every figure of a published profile that a kitchen can set itself, in the order in which the roles are listed. */
export const changeableFigures = (profile: Profile): Changeable[] =>
  limitsRoles.flatMap((role) => changeableFigure(profile, role) ?? []);
