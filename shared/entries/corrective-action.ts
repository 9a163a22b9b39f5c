import * as z from 'zod';
import { id } from '../ids.ts';
import { decidedVia } from './decision.ts';
import { deviationRef } from './deviation.ts';
import { entryKind, language, pieces, words } from './kind.ts';

export const action = z.enum([
  'tag_and_hold',
  'reheat',
  'reheat_done',
  'recook',
  'move',
  'discard',
  'evaluate',
  'repair',
  'retrain',
  'take_out_of_service',
  'other',
]);

/** What was done about a deviation, who decided it, and what became of each piece that it names. */
export const correctiveAction = entryKind({
  kind: 'corrective_action',
  version: 1,
  body: z.strictObject({
    deviation: deviationRef,
    batch: id.nullable(),
    pieces,
    action,
    decided_by: id,
    decided_via: decidedVia,
    decided_words: z.string().trim().max(200).nullable(), // "phone call 03:20"
    condition: z.string().trim().max(500).nullable(),
    disposition: z.string().trim().max(500).nullable(),
    amount: z.string().trim().max(80).nullable(),
    cause: z.string().trim().max(500).nullable(),
    text: words,
    lang: language,
  }),
  words: 'entry.corrective_action',
});
