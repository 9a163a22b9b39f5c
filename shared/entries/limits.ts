import * as z from 'zod';
import { id } from '../ids.ts';
import { localDate } from '../time.ts';
import { unit } from '../units.ts';
import { entryKind, shortWords } from './kind.ts';

/**
 * Where a changed figure comes from. `section`: "house limit", or the local code's own. Authority, document and its
 * date are asked where the figure is looser than the published one; who entered it is the entry's `by`. Whether it is
 * stricter or looser is never typed: lib/fold/limits-direction.ts computes it.
 */
const ground = {
  section: z.string().trim().min(1).max(80),
  authority: shortWords.nullable(),
  document: shortWords.nullable(),
  dated: localDate.nullable(),
};

/** Degrees of a kitchen: colder or hotter than these is a slip of the hand. */
const inDegrees = z.strictObject({ value: z.number().min(-40).max(300), unit, ...ground });
const inMinutes = z.strictObject({ minutes: z.number().min(1).max(10_080), ...ground });
const inSeconds = z.strictObject({ seconds: z.number().min(0).max(3600), ...ground });
const off = z.strictObject({ off: z.literal(true), ...ground });

/** The figures that a kitchen can set itself; each changes one figure of the published profile, the rest stays. */
export const limitsChanges = z.strictObject({
  hot_hold: inDegrees.optional(),
  hot_hold_roast: off.optional(), // the roast allowance is not used here
  hot_hold_at_most: inMinutes.optional(),
  record_hot_every: inMinutes.optional(),
  cold_hold: inDegrees.optional(),
  stage_1_to: inDegrees.optional(),
  stage_1_within: inMinutes.optional(),
  stage_2_to: inDegrees.optional(),
  stage_2_within: inMinutes.optional(),
  total_to: inDegrees.optional(),
  total_within: inMinutes.optional(),
  ambient_total_to: inDegrees.optional(),
  ambient_total_within: inMinutes.optional(),
  reheat_target: inDegrees.optional(), // of the ordinary route
  reheat_held: inSeconds.optional(),
  reheat_within: inMinutes.optional(),
});
export type LimitsChanges = z.infer<typeof limitsChanges>;
export type LimitsRole = keyof LimitsChanges;
export const limitsRoles = limitsChanges.keyof().options;

/**
 * The limits of a kitchen: a profile of its own that extends a published one and names only what differs. The last
 * entry of the same `limits` id is in force; a kitchen uses it when its `profile` names that id.
 */
export const limits = entryKind({
  kind: 'limits',
  version: 1,
  body: z.strictObject({
    limits: id,
    name: shortWords,
    extends: z.string().min(1).max(60), // id of a published profile
    changes: limitsChanges,
    active: z.boolean(),
  }),
  words: 'entry.limits',
});
