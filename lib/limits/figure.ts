import * as z from 'zod';
import { localDate } from '#shared/time.ts';
import { unit } from '#shared/units.ts';

/**
 * How a figure binds: `law`, an inspector can enforce the text; `model`, law only where a place adopts it; `guide`,
 * approved by the state; `standard`, voluntary; `advice`, the authority's own; `house`, a kitchen set it itself.
 * A miss of anything but law is "outside the published figure", and the answer prints which it is.
 */
export const force = z.enum(['law', 'model', 'guide', 'standard', 'advice', 'house']);
export type Force = z.infer<typeof force>;

/**
 * A published figure as cited data. Nothing that says where it comes from is optional: a figure without section,
 * edition, `checked` or `where` is refused when the program starts.
 */
const cited = {
  id: z.string().min(1),
  section: z.string().min(1), // as published: "3-501.16(A)(1)"
  edition: z.string().min(1),
  /**
   * `read`: this edition's text was read. `second_hand`: somebody else's restatement was. `memory`: neither; `where`
   * says what was read instead.
   */
  checked: z.enum(['read', 'second_hand', 'memory']),
  where: z.string().min(1),
  speaks_of: z.string().min(1),
  force: force.optional(), // missing = that of the profile
  /** A reading of the rule that is contested, in words; the judge answers `not_shown` there. */
  disputed: z.string().min(1).optional(),
  from: localDate.optional(),
  until: localDate.optional(), // a rule that ended keeps its line
};

/** Which side of a figure keeps the rule. */
export const comparison = z.enum(['at_or_above', 'above', 'at_or_below', 'below']);

const bothUnits = z
  .strictObject({ degF: z.number().nullable(), degC: z.number().nullable() })
  .refine((value) => value.degF !== null || value.degC !== null, 'a figure has a value in one unit at least');

/** A temperature. Both units as published (the pair is no exact conversion); null = not published in that unit. */
export const temperatureFigure = z.strictObject({
  ...cited,
  value: bothUnits,
  first: unit, // the unit that the rule prints first
  comparison,
});
export type TemperatureFigure = z.infer<typeof temperatureFigure>;

/** A length of time. `at_most`: exactly the figure still keeps the rule. */
export const timeFigure = z.strictObject({
  ...cited,
  minutes: z.number().positive(),
  comparison: z.enum(['at_most', 'less_than']),
});

/** How far a thermometer may be off. */
export const accuracyFigure = z.strictObject({ ...cited, value: z.number().positive(), unit });

/** One row of a cooking chart: at or above the value for at least the seconds. */
export const chartRow = z.strictObject({ degF: z.number(), degC: z.number(), held_s: z.number().min(0) });
export const chartFigure = z.strictObject({ ...cited, first: unit, rows: z.array(chartRow).min(1) });

/** A chart and what it asks beside the rows: rotated or stirred, covered, and so many seconds of standing. */
export const cookFigure = z.strictObject({ chart: chartFigure, stand_s: z.number().positive().nullable() });

/** A number of days, the first counted as day 1. */
export const daysFigure = z.strictObject({ ...cited, days: z.number().int().positive() });

/** What a rule asks for without a figure: a procedure in writing, a mark, a method. */
export const askedFor = z.strictObject({ ...cited });

/** The oven table beside the roast chart: °F by kind of oven and by the weight that goes in. */
export const ovenFigure = z.strictObject({
  ...cited,
  heavy_from_lb: z.number().positive(),
  lines: z.array(
    z.strictObject({
      oven: z.enum(['still_dry', 'convection', 'high_humidity']),
      light_degF: z.number(),
      heavy_degF: z.number(),
      comparison: z.enum(['at_or_above', 'at_or_below']),
    }),
  ),
});
export type OvenFigure = z.infer<typeof ovenFigure>;
