import * as z from 'zod';
import { id } from '../ids.ts';
import { unit } from '../units.ts';
import { entryKind, shortWords } from './kind.ts';

/**
 * A thermometer was adjusted on paper: from now on so many degrees are added to what it shows, until the next entry.
 * Readings taken before it stay as they were. Both values are compared and the worse one decides (docs/judge.md 2).
 */
export const probeAdjusted = entryKind({
  kind: 'probe_adjusted',
  version: 1,
  body: z.strictObject({
    probe: id,
    correction: z.number().min(-10).max(10).nullable(), // degrees to add; null = none any more
    unit, // of the thermometer's display
    reason: shortWords, // which checks it rests on, or that the thermometer itself was set
  }),
  words: 'entry.probe_adjusted',
});
