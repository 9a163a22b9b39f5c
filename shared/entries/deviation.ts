import * as z from 'zod';
import { id } from '../ids.ts';
import { instant } from '../time.ts';
import { unit } from '../units.ts';
import { entryKind, language, pieces, words } from './kind.ts';
import { stepName } from './step-name.ts';

/**
 * How people's entries refer to a deviation: the id of a `deviation` entry (made by hand), or the key of one that
 * the judge opened, "batch/piece/step/stage/entry": batch id, piece number or "-", id of the step's first entry,
 * stage, id of the first reading that decides.
 */
export const deviationRef = z.string().min(1).max(240);

/** A deviation that a person opened. `at` is when it was found. */
export const deviation = entryKind({
  kind: 'deviation',
  version: 1,
  body: z.strictObject({
    batch: id.nullable(),
    pieces,
    step: stepName.nullable(),
    equipment: id.nullable(),
    probe: id.nullable(),
    limit: z
      .strictObject({
        section: z.string().max(80),
        value: z.number().nullable(),
        unit: unit.nullable(),
        within_min: z.number().nullable(),
      })
      .nullable(),
    found: id.nullable(), // the reading or check that showed it
    last_good: id.nullable(), // the last good reading before it
    since: instant.nullable(), // null = nobody knows
    since_basis: z.string().trim().max(300).nullable(),
    text: words,
    lang: language,
  }),
  words: 'entry.deviation',
});
