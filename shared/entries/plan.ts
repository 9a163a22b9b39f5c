import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind } from './kind.ts';
import { spot, stepName } from './step-name.ts';

/** How often to look, at what: the house's own plan. No published section sets an interval. */
export const plan = entryKind({
  kind: 'plan',
  version: 1,
  body: z.strictObject({
    plan: id,
    step: z.union([stepName, z.enum(['probe_check'])]),
    equipment: z.array(id).max(100), // none = wherever the step takes place
    every_min: z.int().min(5).max(10_080).nullable(), // "every"
    at_most_min: z.int().min(5).max(10_080).nullable(), // "at most"; the judge's plan_interval_min
    checkpoints_min: z.array(z.int().min(0).max(10_080)).max(20), // after the step's start: 0, 60, 120, 240, 360
    looks: z.enum(['watch_piece', 'thin_ends_and_every_second_thick', 'every_piece']),
    spots: z.array(spot).max(6),
    note: z.string().trim().max(300).nullable(),
    active: z.boolean(),
  }),
  words: 'entry.plan',
});
