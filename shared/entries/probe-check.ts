import * as z from 'zod';
import { id } from '../ids.ts';
import { unit } from '../units.ts';
import { entryKind, typed } from './kind.ts';

/** A thermometer in a bath of known temperature. Kept or broken is the judge's to say (judge.md 4.9). */
export const probeCheck = entryKind({
  kind: 'probe_check',
  version: 1,
  body: z.strictObject({
    probe: id,
    bath: z.enum(['ice', 'boiling', 'reference']),
    typed,
    value: z.number(),
    unit,
    expected: z.number(), // in the same unit
    accuracy: z.number().positive().nullable(), // allowed error; null = the published figure of its scale
    note: z.string().trim().max(300).nullable(),
  }),
  words: 'entry.probe_check',
});
