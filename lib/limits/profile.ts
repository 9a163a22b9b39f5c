import * as z from 'zod';
import { accuracyFigure, chartFigure, ovenFigure, temperatureFigure, timeFigure } from './figure.ts';

/** One stage of a cooling rule: from one figure to another within a time, counted from the start or the stage before. */
const coolingStage = z.strictObject({
  name: z.enum(['stage_1', 'stage_2', 'total', 'ambient_total']),
  from: temperatureFigure.nullable(), // null = counted from the moment it was made
  to: temperatureFigure,
  within: timeFigure,
  counted: z.enum(['from_start', 'from_previous']),
});
export type CoolingStage = z.infer<typeof coolingStage>;

/** A way of reheating: a target, and the seconds that it must be held (0 = none demanded). */
const reheatRoute = z.strictObject({
  target: temperatureFigure,
  held_s: z.number().min(0),
  stand_s: z.number().positive().nullable(), // standing time after a microwave, covered
});
export type ReheatRoute = z.infer<typeof reheatRoute>;

const noFigure = z.strictObject({ section: z.string().min(1), why: z.string().min(1) });

/**
 * What a place's code says, by role. A role that is null has no published figure there: its stage is
 * `not_applicable`, reason `no_figure`.
 */
export const figures = z.strictObject({
  hot_hold: temperatureFigure.nullable(),
  hot_hold_roast: temperatureFigure.nullable(), // the roast allowance
  cold_hold: temperatureFigure.nullable(),
  cooling: z.array(coolingStage), // [] = no figure
  cooling_ambient: coolingStage.nullable(),
  reheat_from: temperatureFigure.nullable(),
  reheat_within: timeFigure.nullable(),
  reheat_conventional: reheatRoute.nullable(),
  reheat_microwave: reheatRoute.nullable(),
  reheat_commercial: reheatRoute.nullable(),
  reheat_roast: noFigure.nullable(), // by the roast chart and its oven table; no time of its own
  reheat_immediate: noFigure.nullable(),
  roast_chart: chartFigure.nullable(),
  roast_oven: ovenFigure.nullable(),
  probe_fahrenheit: accuracyFigure.nullable(),
  probe_celsius: accuracyFigure.nullable(), // also a dual scale
});
export type Figures = z.infer<typeof figures>;

/** A profile as it is written down: a parent, and only the roles in which it differs. */
export const profileSource = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9_]*$/),
  name: z.string().min(1),
  edition: z.string().min(1),
  extends: z.string().nullable(),
  figures: figures.partial(),
});
export type ProfileSource = z.infer<typeof profileSource>;

/** A profile as the judge reads it: every role answered. */
export type Profile = { id: string; name: string; edition: string; figures: Figures };

const unanswered: Figures = {
  hot_hold: null,
  hot_hold_roast: null,
  cold_hold: null,
  cooling: [],
  cooling_ambient: null,
  reheat_from: null,
  reheat_within: null,
  reheat_conventional: null,
  reheat_microwave: null,
  reheat_commercial: null,
  reheat_roast: null,
  reheat_immediate: null,
  roast_chart: null,
  roast_oven: null,
  probe_fahrenheit: null,
  probe_celsius: null,
};

/**
 * The source laid over its parent: what it names replaces the parent's role whole, the rest is the parent's.
 * Without a parent a role that is not named has no figure.
 */
export function resolved(source: ProfileSource, parent: Profile | null): Profile {
  // A role that is named but undefined would take the parent's figure away without a word, so it is left out.
  const named = Object.fromEntries(
    Object.entries(source.figures).filter(([, figure]) => figure !== undefined),
  );
  return {
    id: source.id,
    name: source.name,
    edition: source.edition,
    figures: { ...(parent?.figures ?? unanswered), ...named },
  };
}
