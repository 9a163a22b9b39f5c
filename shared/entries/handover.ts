import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, language, words } from './kind.ts';

/** The shift, with what is cooling, blocked, due and undecided, from one person to another, by name. */
export const handover = entryKind({
  kind: 'handover',
  version: 1,
  body: z.strictObject({
    from: id.nullable(),
    to: id,
    open_items: z.array(z.string().trim().max(300)).max(100),
    text: words.nullable(),
    lang: language,
  }),
  words: 'entry.handover',
});
