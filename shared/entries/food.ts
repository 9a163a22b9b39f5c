import * as z from 'zod';
import { id } from '../ids.ts';
import { entryKind, shortWords } from './kind.ts';

/** The class decides the rule; `unknown` means the strictest that could apply (judge.md, section 7). */
export const foodClass = z.enum([
  'intact_roast',
  'injected_or_tenderized',
  'ground',
  'sausage_raw',
  'sausage_cooked',
  'poultry',
  'pork_whole',
  'beef_whole',
  'pulled_or_chopped',
  'plant',
  'sauce',
  'dairy_side',
  'fish',
  'egg',
  'unknown',
]);
export type FoodClass = z.infer<typeof foodClass>;

export const food = entryKind({
  kind: 'food',
  version: 1,
  body: z.strictObject({
    food: id,
    name: shortWords,
    name_es: z.string().trim().max(200).nullable(),
    class: foodClass,
    counted: z.enum(['pieces', 'pans', 'not_counted']),
    sealed_commercial: z.boolean(), // first warming from an inspected plant's sealed package: 3-403.11(C)
    note: z.string().trim().max(300).nullable(),
    active: z.boolean(),
  }),
  words: 'entry.food',
});
