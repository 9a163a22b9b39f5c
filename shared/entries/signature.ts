import * as z from 'zod';
import { instant, localDate } from '../time.ts';
import { entryKind, shortWords } from './kind.ts';
import { role } from './person.ts';

/** SHA-256 in lower-case hexadecimal. */
export const sha256Hex = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * A manager's signature under one operating day: who, as what, meaning what, over which text. `hash` is the
 * SHA-256 of the canonical day (UTF-8); the text itself is stored beside the ledger under that hash.
 */
export const signature = entryKind({
  kind: 'signature',
  version: 1,
  body: z.strictObject({
    day: localDate,
    revision: z.int().min(1),
    from: instant,
    to: instant,
    name: shortWords,
    role,
    meaning: z.string().trim().min(1).max(500),
    open_items: z.array(z.strictObject({ ref: z.string().max(240), decision: shortWords })).max(100),
    hash: sha256Hex,
    head: z.strictObject({ seq: z.int().min(1), hash: sha256Hex }).nullable(), // of the chain when it was signed
  }),
  words: 'entry.signature',
});
