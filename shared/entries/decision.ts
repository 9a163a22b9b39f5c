import * as z from 'zod';
import { id } from '../ids.ts';
import { deviationRef } from './deviation.ts';
import { entryKind, pieces, shortWords } from './kind.ts';

/** How the one who decided was reached. A decision by phone is confirmed later by that person's own sign-in. */
export const decidedVia = z.enum(['in_person', 'phone', 'own_duty']);

/** What a named person decided on blocked food. Only a manager or owner (or whom the house names) can release. */
export const decision = entryKind({
  kind: 'decision',
  version: 1,
  body: z.strictObject({
    deviation: deviationRef,
    batch: id.nullable(),
    pieces,
    decision: z.enum(['release', 'discard', 'set_apart', 'confirm']), // confirm: "I decided that by phone"
    confirms: id.nullable(), // the entry that wrote down the decision by phone
    decided_by: id,
    decided_via: decidedVia,
    reason: shortWords,
  }),
  words: 'entry.decision',
});
