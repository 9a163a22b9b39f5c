import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, shortWords } from './kind.ts';

/**
 * A correction: the old entry stays readable, this one says what was meant and why. `struck` true takes an entry
 * back (undo), `piece` moves a reading to the right piece.
 */
export const amendment = entryKind({
  kind: 'amendment',
  version: 1,
  body: z.strictObject({
    target: id,
    field: z.enum(['value', 'piece', 'at', 'spot', 'probe', 'batch', 'equipment', 'held_s', 'struck']),
    from: z.string().max(80), // as it was written
    to: z.string().max(80), // as it was meant
    reason: shortWords,
  }),
  words: 'entry.amendment',
});
