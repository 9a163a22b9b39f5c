import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { CoolingStage, Profile } from '#lib/limits/profile.ts';
import type { LimitsChanges, LimitsRole } from '#shared/entries/limits.ts';
import { converted, type Unit } from '#shared/units.ts';

/**
 * What a changed figure does to the published one. `unknown`: it can help or harm by the night, and is treated as
 * looser. `not_offered`: the published profile has no such figure to change.
 */
export type Direction = 'stricter' | 'same' | 'looser' | 'unknown' | 'not_offered';

export type StageRole = 'stage_1' | 'stage_2' | 'total' | 'ambient_total';

/** The published figure in a unit: as printed, or converted exactly where only the other one is published. */
export function publishedIn(figure: TemperatureFigure, unit: Unit): number {
  const own = figure.value[unit];
  if (own !== null) return own;
  const other = unit === 'degF' ? 'degC' : 'degF';
  return converted(figure.value[other] ?? Number.NaN, other, unit);
}

/** Whether a hotter figure asks more of the kitchen: it does where food has to be at or above it. */
const hotterAsksMore = ({ comparison }: TemperatureFigure): boolean =>
  comparison === 'at_or_above' || comparison === 'above';

const bySign = (more: number): Direction => (more > 0 ? 'stricter' : more < 0 ? 'looser' : 'same');

function ofDegrees(change: { value: number; unit: Unit }, figure: TemperatureFigure): Direction {
  const more = change.value - publishedIn(figure, change.unit);
  return bySign(hotterAsksMore(figure) ? more : -more);
}

/** The cooling stage that a role changes, of what was cooked or of what was made at room temperature. */
export function stageOf(profile: Profile, name: StageRole): CoolingStage | null {
  const { cooling, cooling_ambient: ambient } = profile.figures;
  if (name === 'ambient_total') return ambient;
  return cooling.find((stage) => stage.name === name) ?? null;
}

/** A stage that is counted from this one's figure begins later when the figure is colder: nobody can say which weighs more. */
function startsAnother(profile: Profile, name: StageRole): boolean {
  const { cooling } = profile.figures;
  const next = cooling[cooling.findIndex((stage) => stage.name === name) + 1];
  return next?.counted === 'from_previous' && next.name !== name;
}

function ofStage(profile: Profile, name: StageRole, change: { value: number; unit: Unit }): Direction {
  const stage = stageOf(profile, name);
  if (stage === null) return 'not_offered';
  const direction = ofDegrees(change, stage.to);
  return direction !== 'same' && startsAnother(profile, name) ? 'unknown' : direction;
}

/** A shorter time asks more. Where nothing is published a time of the house's own asks more than nothing. */
const ofMinutes = (change: { minutes: number }, published: number | null | undefined): Direction =>
  published == null ? 'stricter' : bySign(published - change.minutes);

const ofStageMinutes = (profile: Profile, name: StageRole, change: { minutes: number }): Direction => {
  const stage = stageOf(profile, name);
  return stage === null ? 'not_offered' : ofMinutes(change, stage.within.minutes);
};

type Judges = {
  [R in LimitsRole]: (change: NonNullable<LimitsChanges[R]>, profile: Profile) => Direction;
};

const judges: Judges = {
  hot_hold: (change, { figures: { hot_hold: published } }) =>
    published === null ? 'stricter' : ofDegrees(change, published),
  hot_hold_roast: (_, { figures }) => (figures.hot_hold_roast === null ? 'not_offered' : 'stricter'),
  hot_hold_at_most: (change, { figures }) => ofMinutes(change, figures.hot_hold_at_most?.minutes),
  record_hot_every: (change, { figures }) => ofMinutes(change, figures.record_hot_every?.minutes),
  cold_hold: (change, { figures: { cold_hold: published } }) =>
    published === null ? 'stricter' : ofDegrees(change, published),
  stage_1_to: (change, profile) => ofStage(profile, 'stage_1', change),
  stage_1_within: (change, profile) => ofStageMinutes(profile, 'stage_1', change),
  stage_2_to: (change, profile) => ofStage(profile, 'stage_2', change),
  stage_2_within: (change, profile) => ofStageMinutes(profile, 'stage_2', change),
  total_to: (change, profile) => ofStage(profile, 'total', change),
  total_within: (change, profile) => ofStageMinutes(profile, 'total', change),
  ambient_total_to: (change, profile) => ofStage(profile, 'ambient_total', change),
  ambient_total_within: (change, profile) => ofStageMinutes(profile, 'ambient_total', change),
  reheat_target: (change, { figures: { reheat_conventional: route } }) =>
    route === null ? 'not_offered' : ofDegrees(change, route.target),
  reheat_held: (change, { figures: { reheat_conventional: route } }) =>
    route === null ? 'not_offered' : bySign(change.seconds - route.held_s),
  reheat_within: (change, { figures: { reheat_within: within } }) =>
    within === null ? 'not_offered' : ofMinutes(change, within.minutes),
};

/** Computed, never typed. */
export function directionOf<R extends LimitsRole>(
  role: R,
  change: NonNullable<LimitsChanges[R]>,
  published: Profile,
): Direction {
  return judges[role](change, published);
}

/** Whether a change needs an authority, a document and its date. */
export const needsGround = (direction: Direction): boolean =>
  direction === 'looser' || direction === 'unknown';
