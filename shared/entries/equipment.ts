import * as z from 'zod';
import { id } from '../ids.ts';
import { temperature } from '../units.ts';
import { entryKind, shortWords } from './kind.ts';

export const equipmentKind = z.enum([
  'pit',
  'heated_cabinet',
  'cooler',
  'ice_bath',
  'blast_chiller',
  'freezer', // the days that food is in it do not count against its date mark
  'steam_table',
  'insulated_box',
  'oven',
  'range',
  'rack',
  'cutting',
  'pass',
]);
export type EquipmentKind = z.infer<typeof equipmentKind>;

export const equipment = entryKind({
  kind: 'equipment',
  version: 1,
  body: z.strictObject({
    equipment: id,
    name: shortWords,
    kind: equipmentKind,
    set: temperature.nullable(),
    order: z.int().min(0).max(999), // place in the walk of a round
    note: z.string().trim().max(300).nullable(),
    active: z.boolean(),
  }),
  words: 'entry.equipment',
});
