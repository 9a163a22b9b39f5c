import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, shortWords, words } from './kind.ts';

/** `at` is when it went off, as far as anyone knows; `since_basis` says how they know. */
export const equipmentOff = entryKind({
  kind: 'equipment_off',
  version: 1,
  body: z.strictObject({
    equipment: id,
    reason: shortWords,
    since_basis: z.string().trim().max(300).nullable(),
    text: words.nullable(),
  }),
  words: 'entry.equipment_off',
});
