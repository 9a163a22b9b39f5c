import type { Profile } from '#lib/limits/profile.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { type Line, line } from './compare.ts';
import type { StepRecord } from './record.ts';

/** The figure that this food is held to, and the lower one under which a contested allowance neither proves nor breaks. */
export type HeldTo = {
  limit: Line;
  surface: Line | null; // where the surface has a figure of its own
  disputedFrom: Line | null;
  section: string;
};

/** The line that a reading of this spot is held to. */
export const lineOf = (to: HeldTo, spot: Spot | null): Line =>
  spot === 'surface' && to.surface !== null ? to.surface : to.limit;

/**
 * 130 °F for an intact roast whose cook is shown by the chart and the oven line; contested where it is not shown;
 * 135 °F for everything else, a class not known included. Null: the profile has no hot-holding figure.
 */
export function heldTo(record: StepRecord, { figures }: Profile): HeldTo | null {
  const { hot_hold: hot, hot_hold_roast: roast } = figures;
  if (hot === null) return null;
  const surface = figures.hot_hold_surface === null ? null : line(figures.hot_hold_surface);
  if (roast === null || record.food.class !== 'intact_roast')
    return { limit: line(hot), surface, disputedFrom: null, section: hot.section };
  if (record.facts.roast_cook === 'kept')
    return { limit: line(roast), surface, disputedFrom: null, section: roast.section };
  const disputed = record.facts.roast_cook === 'not_shown';
  return { limit: line(hot), surface, disputedFrom: disputed ? line(roast) : null, section: hot.section };
}
