import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, language, words } from './kind.ts';

/** Why a look could not be made: it is no look, and stays a gap. */
export const couldNot = z.enum(['no_time', 'no_probe', 'not_there', 'too_hot', 'locked', 'other']);

export const note = entryKind({
  kind: 'note',
  version: 1,
  body: z.strictObject({
    text: words,
    lang: language,
    batch: id.nullable(),
    piece: z.int().min(1).max(999).nullable(),
    equipment: id.nullable(),
    probe: id.nullable(),
    round: id.nullable(),
    could_not: couldNot.nullable(),
  }),
  words: 'entry.note',
});
