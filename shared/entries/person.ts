import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, language, shortWords } from './kind.ts';

export const role = z.enum(['crew', 'lead', 'manager', 'owner', 'reader']);
export type Role = z.infer<typeof role>;

export const person = entryKind({
  kind: 'person',
  version: 1,
  body: z.strictObject({
    person: id,
    name: shortWords,
    initials: z.string().trim().min(1).max(4),
    role,
    title: z.string().trim().max(80).nullable(), // "pit cook, night"
    language,
    phone: z.string().trim().max(40).nullable(),
    on_call: z.boolean(), // is called when food is under the limit
    active: z.boolean(),
  }),
  words: 'entry.person',
});
