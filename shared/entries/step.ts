import * as z from 'zod';
import { id } from '../ids.ts';
import { instant } from '../time.ts';
import { entryKind, pieces } from './kind.ts';
import { stepName } from './step-name.ts';

/**
 * What is known of a step beside its place. The named members are read by the fold; anything else that a kitchen
 * notes is kept and printed as written. Read where they have the right shape, and taken as not said where not:
 * `mode`, `written_procedure`, `procedure`, `marked`, `marked_discard_at` of time control (lib/fold/time-facts.ts);
 * `ready_to_eat` and `date_mark`, the local day that is day 1, of food held cold (lib/fold/marked.ts).
 */
export const stepDetails = z.looseObject({
  route: z.enum(['conventional', 'microwave', 'commercial', 'roast', 'immediate']).optional(), // reheat
  ingredients: z.enum(['cooked', 'ambient']).optional(), // cooling
  prepared_at: instant.optional(), // cooling from ambient ingredients
  covered: z.union([z.boolean(), z.string().max(80)]).optional(),
  stirred: z.boolean().optional(), // microwave
  stood_s: z.number().min(0).optional(), // microwave
  oven: z.enum(['still_dry', 'convection', 'high_humidity', 'pit']).optional(), // cook
  oven_temp_F: z.number().optional(), // cook: the lowest that the oven was seen at
  raw_mass_lb: z.array(z.number().positive()).optional(), // cook: piece by piece, as it went in
  pan_depth_in: z.number().positive().optional(), // cooling: decides how fast
  cooler_F: z.number().optional(),
  piece_in: z.array(z.number().positive()).min(1).max(3).optional(), // smallest piece: thickness, width, length
  reason: z.enum(['sold', 'discarded', 'used_up', 'delivered', 'other']).optional(), // gone
  amount: z.string().max(80).optional(),
  text: z.string().max(500).optional(),
});

/** From here on these pieces are in this step, at this equipment, until the next step that names them. */
export const step = entryKind({
  kind: 'step',
  version: 1,
  body: z.strictObject({
    batch: id,
    pieces,
    step: stepName,
    equipment: id.nullable(),
    details: stepDetails,
  }),
  words: 'entry.step',
});
