import * as z from 'zod';
import { entryKind, shortWords } from './kind.ts';

/**
 * How long this kitchen keeps its records, and by which rule. The last one written is in force; less than the least
 * of lib/limits/keeping.ts never is. Nothing goes by itself: an owner has to ask for it (`holdproof erase`).
 */
export const retention = entryKind({
  kind: 'retention',
  version: 1,
  body: z.strictObject({
    years: z.int().min(1).max(200),
    because: shortWords, // the local rule, or "house rule"
  }),
  words: 'entry.retention',
});
