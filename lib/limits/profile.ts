import * as z from 'zod';
import { foodClass } from '#shared/entries/food.ts';
import {
  accuracyFigure,
  askedFor,
  chartFigure,
  cookFigure,
  daysFigure,
  force,
  ovenFigure,
  temperatureFigure,
  timeFigure,
} from './figure.ts';

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

/** Warming between two figures within a time (the come-up of a cook). */
const comeUp = z.strictObject({ from: temperatureFigure, to: temperatureFigure, within: timeFigure });

/** A temperature at which food may leave control, and for which food (missing = any). */
const timeStart = z.strictObject({
  figure: temperatureFigure,
  only: z.enum(['produce_cut', 'package_opened']).optional(),
  /** Never above this while it runs. */ stays: temperatureFigure.optional(),
});
export type TimeStart = z.infer<typeof timeStart>;

/** Time instead of temperature: any of the starts will do; `stays` binds the whole form. */
const timeForm = z.strictObject({
  starts: z.array(timeStart).min(1),
  stays: temperatureFigure.nullable(),
  within: timeFigure,
});

const timeControl = z.strictObject({
  procedure: askedFor,
  marking: askedFor,
  four_hours: timeForm.nullable(),
  six_hours: timeForm.nullable(),
});

const noncontinuous = z.strictObject({
  initial_heating: timeFigure,
  cooling: askedFor,
  final_cook: askedFor, // by the food's own row, or by `final_chart` where an edition asks one figure of all
  final_chart: chartFigure.nullable(),
  procedure: askedFor,
});

/** Cooling by a method without a clock: when these conditions are recorded the timed stages do not apply. */
const untimedCooling = z.strictObject({
  asked: askedFor,
  air: temperatureFigure,
  layer_in: z.number().positive(), // inches
  intact_in: z.number().positive(), // thickness of one dimension of a whole piece of meat, inches
});

/** Ways of cooling that a rule names, as message keys under `method`. Advice: no verdict rests on them. */
const coolingMethods = z.strictObject({ asked: askedFor, methods: z.array(z.string().min(1)).min(1) });

/** An exception or defence that the business has to prove. It is named beside a broken hold and softens nothing. */
const defence = z.strictObject({
  ...askedFor.shape,
  words: z.string().min(1),
  minutes: z.number().nullable(),
});
export type Defence = z.infer<typeof defence>;

/** How long records are kept, in words, where a text sets it. */
const retention = z.strictObject({ ...askedFor.shape, words: z.string().min(1) });

const noFigure = z.strictObject({ section: z.string().min(1), why: z.string().min(1) });

/**
 * What a place's code says, by role. A role that is null has no published figure there: its stage is
 * `not_applicable`, reason `no_figure`.
 */
export const figures = z.strictObject({
  hot_hold: temperatureFigure.nullable(),
  hot_hold_roast: temperatureFigure.nullable(), // the roast allowance
  hot_hold_surface: temperatureFigure.nullable(), // where the surface has a figure of its own
  hot_hold_at_most: timeFigure.nullable(), // where a hold may not last longer
  hot_hold_defences: z.array(defence),
  record_hot_every: timeFigure.nullable(), // where a text sets how often food held hot is read and written
  cold_hold: temperatureFigure.nullable(),
  cooling: z.array(coolingStage), // [] = no figure
  cooling_ambient: coolingStage.nullable(),
  cooling_untimed: untimedCooling.nullable(),
  cooling_methods: coolingMethods.nullable(),
  reheat_from: temperatureFigure.nullable(),
  reheat_within: timeFigure.nullable(),
  reheat_conventional: reheatRoute.nullable(),
  reheat_microwave: reheatRoute.nullable(),
  reheat_commercial: reheatRoute.nullable(),
  reheat_roast: noFigure.nullable(), // by the roast chart and its oven table; no time of its own
  reheat_immediate: noFigure.nullable(),
  roast_chart: chartFigure.nullable(),
  roast_oven: ovenFigure.nullable(),
  /** By class of food. A class that is not named has no cooking figure here; `unknown` is the strictest. */
  cook: z.partialRecord(foodClass, chartFigure),
  cook_microwave: cookFigure.nullable(),
  come_up: comeUp.nullable(),
  noncontinuous: noncontinuous.nullable(),
  time_control: timeControl.nullable(),
  date_mark: z.strictObject({ days: daysFigure, at: temperatureFigure }).nullable(),
  retention: retention.nullable(),
  probe_fahrenheit: accuracyFigure.nullable(),
  probe_celsius: accuracyFigure.nullable(), // also a dual scale
});
export type Figures = z.infer<typeof figures>;

/** A profile as it is written down: a parent, and only the roles in which it differs. */
export const profileSource = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9_]*$/),
  name: z.string().min(1),
  place: z.string().min(1), // where it counts, for a list that is sorted by place
  force,
  edition: z.string().min(1),
  extends: z.string().nullable(),
  /** What a reader should know of the profile: disputes, weak ground, what may have changed since the copy seen. */
  notes: z.array(z.string().min(1)),
  figures: figures.partial(),
});
export type ProfileSource = z.infer<typeof profileSource>;

/** A profile as the judge reads it: every role answered. */
export type Profile = Pick<ProfileSource, 'id' | 'name' | 'place' | 'force' | 'edition' | 'notes'> & {
  figures: Figures;
};

const unanswered: Figures = {
  hot_hold: null,
  hot_hold_roast: null,
  hot_hold_surface: null,
  hot_hold_at_most: null,
  hot_hold_defences: [],
  record_hot_every: null,
  cold_hold: null,
  cooling: [],
  cooling_ambient: null,
  cooling_untimed: null,
  cooling_methods: null,
  reheat_from: null,
  reheat_within: null,
  reheat_conventional: null,
  reheat_microwave: null,
  reheat_commercial: null,
  reheat_roast: null,
  reheat_immediate: null,
  roast_chart: null,
  roast_oven: null,
  cook: {},
  cook_microwave: null,
  come_up: null,
  noncontinuous: null,
  time_control: null,
  date_mark: null,
  retention: null,
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
    place: source.place,
    force: source.force,
    edition: source.edition,
    notes: source.notes,
    figures: { ...(parent?.figures ?? unanswered), ...named },
  };
}
