import * as z from 'zod';
import { localDate, timeOfDay } from '../time.ts';
import { unit } from '../units.ts';
import { entryKind, language, shortWords } from './kind.ts';

/** What the house allows after a deviation. By default only a manager's decision or discarding ends a block. */
export const houseRules = z.strictObject({
  reheat_may_return: z.boolean(), // may a reheat that was kept return food by itself
  reheat_within_min: z.int().min(1).max(1440).nullable(), // and within how long of the last good look
  decides: z.enum(['manager', 'lead']), // the least role that may release food
  decide_within_min: z.int().min(1).max(1440).nullable(),
});

export const site = entryKind({
  kind: 'site',
  version: 1,
  body: z.strictObject({
    name: shortWords,
    address: z.string().trim().max(300).nullable(),
    zone: z.string().min(1).max(60), // IANA
    altitude_m: z.number().min(-430).max(6000).nullable(),
    unit,
    clock: z.enum(['12', '24']),
    language,
    day_starts: timeOfDay,
    closed_weekdays: z.array(z.int().min(0).max(6)).max(7), // 0 = Sunday
    closed_on: z.array(localDate).max(400),
    profile: z.string().min(1).max(60), // id of a file in lib/limits, or of a `limits` entry
    late_after_min: z.int().min(1).max(1440), // an entry typed later than this after its look is marked late
    odd_above: z.number().nullable(), // a figure above this is asked about, in the site's unit
    paper: z.enum(['letter', 'a4']),
    house: houseRules,
  }),
  words: 'entry.site',
});
