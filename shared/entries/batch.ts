import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, pieces, shortWords, words } from './kind.ts';

/** What went on together. Pieces (or pans) are numbered from 1; null = not counted (a kettle). */
export const batch = entryKind({
  kind: 'batch',
  version: 1,
  body: z.strictObject({
    batch: id,
    name: shortWords, // "BR-A"
    food: id,
    pieces: z.int().min(1).max(999).nullable(),
    made: z.enum(['new', 'cut', 'split', 'join']), // a cut ends a roast's allowance; a blocked source blocks it
    source: z
      .array(z.strictObject({ batch: id.nullable(), pieces, words: z.string().trim().max(300).nullable() }))
      .max(50),
    note: words.nullable(),
  }),
  words: 'entry.batch',
});
