import * as z from 'zod';
import { id } from '../ids.ts';
import { unit } from '../units.ts';
import { entryKind, typed } from './kind.ts';
import { spot } from './step-name.ts';

/** One look with one thermometer at one place. An air reading names equipment and no batch. */
export const reading = entryKind({
  kind: 'reading',
  version: 1,
  body: z.strictObject({
    batch: id.nullable(),
    piece: z.int().min(1).max(999).nullable(), // null = the batch, not counted
    equipment: id.nullable(),
    spot: spot.nullable(),
    typed,
    value: z.number(), // what `typed` means, as a decimal
    unit,
    probe: id.nullable(),
    held_s: z.number().min(0).max(86_400).nullable(), // seconds that it stayed at or above the value
    round: id.nullable(),
    source: z.enum(['hand', 'logger']),
    correction: z.number().nullable(), // degrees to add, entered for the probe before the reading was taken
    late_reason: z.string().trim().max(300).nullable(),
  }),
  words: 'entry.reading',
});
