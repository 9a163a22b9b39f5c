import * as z from 'zod';
import { foodClass } from '#shared/entries/food.ts';
import { spot } from '#shared/entries/step-name.ts';
import { instant, localDate, msOf } from '#shared/time.ts';
import { unit } from '#shared/units.ts';

/**
 * A case of the judge as it is written (docs/judge.md, section 7). Only the members that the built kinds read are
 * described; a case of another kind is not looked into.
 */
const verdict = z.enum(['kept', 'not_shown', 'broken', 'not_applicable']);

const reading = z.object({
  t: instant,
  value: z.number(),
  unit: unit.default('degF'),
  spot: spot.nullable().default(null),
  piece: z.int().nullable().default(null),
  probe: z.string().nullable().default(null),
  held_s: z.number().nullable().default(null),
  source: z.enum(['hand', 'logger']).default('hand'),
  suspect: z.boolean().default(false),
  correction: z.number().nullable().default(null),
});
export type CaseReading = z.infer<typeof reading>;

const published = z.array(z.object({ value: z.number(), unit })).min(1);

const heldFigure = z
  .object({
    figure: published,
    comparison: z.enum(['at_or_above', 'above', 'at_or_below', 'below']),
    section: z.string(),
  })
  .nullish();

const reheatRoute = z.object({
  target: published,
  held_s: z.number().default(0),
  stand_s: z.number().nullable().default(null),
  section: z.string(),
});

/** Figures that a case carries; of a role that it does not name it says nothing. Members not described are not read. */
export const profileFigures = z.object({
  hot_hold: heldFigure,
  cold_hold: heldFigure,
  cooling: z
    .array(
      z.object({
        name: z.enum(['stage_1', 'stage_2', 'total']),
        from: published,
        to: published,
        within_min: z.number(),
        counted: z.enum(['from_start', 'from_previous']),
        strict: z.boolean().default(false),
        section: z.string(),
      }),
    )
    .optional(),
  reheat: z
    .object({
      from: published.optional(),
      within_min: z.number().optional(),
      strict: z.boolean().default(false),
      time_section: z.string().optional(),
      routes: z.object({
        conventional: reheatRoute.optional(),
        microwave: reheatRoute.optional(),
        commercial: reheatRoute.optional(),
      }),
    })
    .nullish(),
  cook: z
    .object({
      rows: z.array(z.object({ figure: published, held_s: z.number() })).min(1),
      section: z.string(),
    })
    .nullish(),
  come_up: z
    .object({
      from: published,
      to: published,
      within_min: z.number(),
      strict: z.boolean().default(false),
      section: z.string(),
    })
    .nullish(),
  /** `strict_start`: the figure itself does not start it, by the model code's figures otherwise. */
  time_control: z.object({ strict_start: z.boolean().optional() }).nullish(),
});
export type ProfileFigures = z.infer<typeof profileFigures>;

/** An instant of a fact; null = not known, or not yet. */
const moment = instant.transform(msOf).nullable();

export const stepInputs = z.object({
  profile: z.string(),
  profile_figures: profileFigures.optional(),
  food: z.object({ class: foodClass, pieces: z.int().nullable().default(null) }),
  facts: z
    .object({
      roast_cook: z.union([verdict, z.literal('none')]),
      route: z.enum(['conventional', 'microwave', 'commercial', 'roast', 'immediate']),
      covered: z.boolean().nullable(),
      stirred: z.boolean().nullable(),
      stood_s: z.number().nullable(),
      ingredients: z.enum(['cooked', 'ambient']),
      prepared_at: moment,
      oven: z.enum(['still_dry', 'convection', 'high_humidity', 'pit']).nullable(),
      oven_temp: z.number().nullable(),
      mass_lb: z.number().nullable(),
      method: z.string(),
      uncovered_protected: z.boolean().nullable(),
      unit_air: z.number().nullable(),
      layer_in: z.number().nullable(),
      intact_in: z.number().nullable(),
      mode: z.enum(['4h', '6h']),
      removed_at: moment,
      written_procedure: z.boolean().nullable(),
      marked: z.boolean().nullable(),
      gone_at: moment,
      starts_as: z.enum(['produce_cut', 'package_opened']).nullable(),
      heat_from: moment,
      heat_to: moment,
      final_from: moment,
      written: z.boolean().nullable(),
      approved: z.boolean().nullable(),
    })
    .partial()
    .default({}),
  plan_interval_min: z.number().nullable().default(null),
  start: instant.nullable().default(null),
  end: instant.nullable().default(null),
  as_of: instant,
  readings: z.array(reading),
});

export const dateMarkInputs = z.object({
  profile: z.string(),
  facts: z.object({
    prepared_on: localDate.nullish(),
    opened_on: localDate.nullish(),
    frozen: z.array(z.tuple([localDate, localDate.nullable()])).nullish(),
    combined_with: z.array(localDate).nullish(),
    as_of_date: localDate,
  }),
});

export const probeCheckInputs = z.object({
  profile: z.string(),
  facts: z.object({
    bath: z.enum(['ice', 'boiling', 'reference']),
    expected: z.number(),
    read: z.number(),
    unit: unit.default('degF'),
    scale: z.literal('both').nullable().default(null),
    accuracy: z.number().nullable().default(null),
    probe: z.string().nullable().default(null),
    checked_at: instant.nullable().default(null),
    last_good_at: instant.nullable().default(null),
  }),
  readings: z.array(reading).default([]),
});

const name = z.union([z.string(), z.number()]).transform(String);
const names = z.array(name).nullable().default(null);
const t = instant;

const standingEvent = z.discriminatedUnion('type', [
  z.strictObject({ t, type: z.literal('batch'), pieces: z.array(name) }),
  z.strictObject({ t, type: z.literal('stage'), stage: z.string(), verdict, pieces: names }),
  z.strictObject({ t, type: z.literal('deviation'), pieces: names }),
  z.strictObject({
    t,
    type: z.literal('reheat'),
    pieces: names,
    temperature: verdict,
    time: verdict,
    allowed: z.boolean(),
    in_time: z.boolean(),
  }),
  z.strictObject({
    t,
    type: z.literal('decision'),
    pieces: names,
    role: z.string(),
    reason: z.string().default(''),
    allowed: z.boolean().default(false),
  }),
  z.strictObject({ t, type: z.literal('discard'), pieces: names }),
  z.strictObject({ t, type: z.enum(['split', 'cut']), from: name, to: z.array(name) }),
  z.strictObject({ t, type: z.literal('join'), from: z.array(name), to: name }),
]);

export const standingInputs = z.object({ as_of: instant, events: z.array(standingEvent) });

/** What every case of every kind has. */
export const anyCase = z.object({
  id: z.string(),
  kind: z.string(),
  inputs: z.record(z.string(), z.unknown()),
  expected: z.record(z.string(), z.unknown()),
  tolerance: z.record(z.string(), z.unknown()).default({}),
});
export type AnyCase = z.infer<typeof anyCase>;
