import * as z from 'zod';
import { id } from '../ids.ts';
import { unit } from '../units.ts';
import { entryKind, shortWords } from './kind.ts';

export const probeColour = z.enum(['red', 'blue', 'green', 'yellow', 'white', 'black', 'orange', 'brown']);

export const probe = entryKind({
  kind: 'probe',
  version: 1,
  body: z.strictObject({
    probe: id,
    name: shortWords,
    colour: probeColour, // of its tag; always also a word
    type: z.string().trim().max(80).nullable(),
    scale: z.enum(['degF', 'degC', 'both']),
    unit, // of its display as it is read here
    step: z.number().positive().max(10), // of its display, in its unit
    accuracy: z.number().positive().max(10).nullable(), // by its maker, in its unit; null = the published figure
    home: z.string().trim().max(80).nullable(),
    active: z.boolean(),
  }),
  words: 'entry.probe',
});
