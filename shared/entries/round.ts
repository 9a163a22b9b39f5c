import * as z from 'zod';
import { id } from '../ids.ts';
import { instant } from '../time.ts';
import { entryKind } from './kind.ts';

/** One walk past all that is held. `at` is its start; a later entry with the same `round` replaces the earlier. */
export const round = entryKind({
  kind: 'round',
  version: 1,
  body: z.strictObject({
    round: id,
    planned_at: instant.nullable(),
    status: z.enum(['started', 'done', 'missed']), // a missed round stays missed; nobody fills it in
    equipment: z.array(id).max(100),
    ended_at: instant.nullable(),
    reason: z.string().trim().max(300).nullable(),
    note: z.string().trim().max(300).nullable(),
  }),
  words: 'entry.round',
});
