import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, shortWords, words } from './kind.ts';

export const equipmentOn = entryKind({
  kind: 'equipment_on',
  version: 1,
  body: z.strictObject({ equipment: id, reason: shortWords, text: words.nullable() }),
  words: 'entry.equipment_on',
});
