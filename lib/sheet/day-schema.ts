import * as z from 'zod';
import { action } from '#shared/entries/corrective-action.ts';
import { decidedVia } from '#shared/entries/decision.ts';
import { equipmentKind } from '#shared/entries/equipment.ts';
import { foodClass } from '#shared/entries/food.ts';
import { language } from '#shared/entries/kind.ts';
import { couldNot } from '#shared/entries/note.ts';
import { role } from '#shared/entries/person.ts';
import { probeColour } from '#shared/entries/probe.ts';
import { spot, stepName } from '#shared/entries/step-name.ts';
import { id } from '#shared/ids.ts';
import { instant, localDate } from '#shared/time.ts';
import { unit } from '#shared/units.ts';

/**
 * The canonical day: everything that the sheet of one operating day says, as one JSON document. A signature covers
 * its RFC 8785 text, so its shape never changes under its `format`: a new shape is a new format with its own file.
 * Instants carry the kitchen's offset; lengths are minutes, unrounded; null = not known, or none. People's words
 * stand as they were written. No message of ours is in it, so a better wording changes no hash.
 */

const number = z.number();
const minutes = z.number().nullable();
const text = z.string();
const pieces = z.array(z.int()).nullable();

export const stageDoc = z.strictObject({
  verdict: z.enum(['kept', 'not_shown', 'broken', 'not_applicable']),
  open: z.boolean(),
  section: text,
  limit: z
    .strictObject({
      value: number,
      unit,
      comparison: z.enum(['at_or_above', 'above', 'at_or_below', 'below']),
    })
    .nullable(),
  limit_min: minutes,
  longest_min: minutes,
  shortest_min: minutes,
  deadline: instant.nullable(),
  reasons: z.array(text),
  rests_on: z.array(id), // readings that decide
  first_bad: instant.nullable(),
  below_longest_min: minutes,
  below_shortest_min: minutes,
  longest_gap_min: minutes,
  pieces_read: z.int().nullable(),
  /** Of a date mark: its last local day. Other stages have no such member. */
  last_day: localDate.nullable().optional(),
  /** How its figures are known, where not all were read in their own text. */
  checked: z.enum(['second_hand', 'memory']).optional(),
});

export const stagesDoc = z.record(text, stageDoc);

export const readingDoc = z.strictObject({
  id,
  seq: z.int(), // number of the entry in the book
  at: instant, // when it was looked
  entered_at: instant, // when it was typed
  by: id,
  known: z.enum(['secret', 'tap', 'command_line']),
  batch: id.nullable(),
  piece: z.int().nullable(),
  equipment: id.nullable(),
  spot: spot.nullable(),
  typed: text, // as it is meant now
  value: number,
  unit,
  thermometer: id.nullable(),
  held_s: number.nullable(),
  source: z.enum(['hand', 'logger']),
  correction: number.nullable(),
  round: id.nullable(),
  late: z.boolean(),
  late_reason: text.nullable(),
  suspect: z.boolean(),
  /** On the wrong side of its rule's figure; null = no rule has a figure for it (air, or a step without one). */
  beyond: z.boolean().nullable(),
  amended: z
    .strictObject({ field: text, from: text, to: text, reason: text, by: id, at: instant })
    .nullable(),
});

export const stretchDoc = z.strictObject({
  kind: z.enum(['seen', 'nobody_looked', 'under', 'suspect']),
  witness: z.enum(['hand', 'logger']).nullable(), // of `seen`: who looked
  from: instant,
  to: instant,
});

/** The proof line of a run inside the day: looks and the stretches between them. It says who looked, not what was. */
export const lineDoc = z.strictObject({
  from: instant,
  to: instant,
  side: z.enum(['under', 'over']), // of the limit that is out of it
  stretches: z.array(stretchDoc),
  looks: z.array(
    z.strictObject({ at: instant, value: number, unit, good: z.boolean(), suspect: z.boolean() }),
  ),
  seen_min: number,
  nobody_looked_min: number,
  under_at_least_min: minutes,
  under_at_most_min: minutes,
});

export const runDoc = z.strictObject({
  id, // of the step entry that began it
  step: stepName,
  pieces,
  equipment: id.nullable(),
  places: z.array(z.strictObject({ equipment: id.nullable(), at: instant })),
  members: z.array(z.strictObject({ piece: z.int().nullable(), from: instant, until: instant.nullable() })),
  start: instant,
  end: instant.nullable(), // null = it went on at `as_of`
  plan_interval_min: minutes,
  details: z.record(text, z.json()),
  stages: stagesDoc,
  by_piece: z.array(z.strictObject({ piece: z.int().nullable(), stages: stagesDoc })),
  not_judged: text.nullable(), // why there are no stages
  line: lineDoc.nullable(),
  readings: z.array(id), // of this day
  earlier: z.array(id), // of other days, named because a verdict rests on them
});

export const batchDoc = z.strictObject({
  id,
  name: text,
  food: z.strictObject({ name: text, name_es: text.nullable(), class: foodClass }).nullable(),
  pieces: z.int().nullable(),
  made: z.enum(['new', 'cut', 'split', 'join']),
  source: z.array(
    z.strictObject({ batch: id.nullable(), name: text.nullable(), pieces, words: text.nullable() }),
  ),
  note: text.nullable(),
  at: instant,
  runs: z.array(runDoc),
  readings: z.array(readingDoc), // each once, in order of time
  earlier: z.array(readingDoc), // of other days, named by a verdict
  standing: z.array(
    z.strictObject({ piece: z.int().nullable(), standing: z.enum(['serve', 'do_not_serve', 'gone']) }),
  ),
  ends: z.array(
    z.strictObject({ piece: z.int().nullable(), at: instant, reason: text, amount: text.nullable() }),
  ),
});

const checkDoc = z.strictObject({
  id,
  at: instant,
  by: id,
  bath: z.enum(['ice', 'boiling', 'reference']),
  typed: text,
  unit,
  expected: number,
  verdict: z.enum(['kept', 'broken']),
  section: text,
  reads: z.enum(['high', 'low']).nullable(),
  note: text.nullable(),
});

export const thermometerDoc = z.strictObject({
  id,
  name: text,
  colour: probeColour,
  type: text.nullable(),
  unit,
  check_before: checkDoc.nullable(), // the last before the day
  checks: z.array(checkDoc), // of the day
  check_after: checkDoc.nullable(), // the first after the day, as far as the book goes
  readings: z.int(), // of this day
  suspect: z.array(id), // of this day
});

const actionDoc = z.strictObject({
  id,
  at: instant,
  entered_at: instant,
  by: id,
  action,
  pieces,
  decided_by: id,
  decided_via: decidedVia,
  decided_words: text.nullable(),
  condition: text.nullable(),
  disposition: text.nullable(),
  amount: text.nullable(),
  cause: text.nullable(),
  text,
  lang: language,
});

const decisionDoc = z.strictObject({
  id,
  at: instant,
  entered_at: instant,
  by: id,
  decision: z.enum(['release', 'discard', 'set_apart', 'confirm']),
  pieces,
  confirms: id.nullable(),
  decided_by: id,
  decided_via: decidedVia,
  reason: text,
});

export const deviationDoc = z.strictObject({
  ref: text,
  opened: z.enum(['by_the_judge', 'by_hand']),
  by: id.nullable(), // who opened it by hand
  batch: id.nullable(),
  pieces,
  step: stepName.nullable(),
  stage: text.nullable(),
  run: id.nullable(),
  equipment: id.nullable(),
  thermometer: id.nullable(),
  section: text.nullable(),
  found_at: instant,
  found: readingDoc.nullable(),
  last_good: readingDoc.nullable(),
  since: instant.nullable(), // null = nobody knows
  since_basis: text.nullable(),
  put_right_at: instant.nullable(),
  out_at_least_min: minutes,
  out_at_most_min: minutes, // until it was put right, else to `as_of`
  text: text.nullable(),
  lang: language.nullable(),
  /** Cause, actions, decisions and ends from all that is known, those after the day too: each has its time. */
  causes: z.array(text),
  actions: z.array(actionDoc),
  decisions: z.array(decisionDoc),
  ends: z.array(
    z.strictObject({
      batch: id.nullable(), // another than the deviation's own: made of its pieces since
      piece: z.int().nullable(),
      end: z.enum(['released', 'reheated', 'discarded', 'gone', 'no_food']).nullable(),
      at: instant.nullable(),
      by: id.nullable(),
    }),
  ),
  unconfirmed: z.array(id), // entries that tell of a decision by phone which its maker has not confirmed
  state: z.enum(['open', 'decided', 'closed']),
});

export const roundDoc = z.strictObject({
  id,
  round: id,
  planned_at: instant.nullable(),
  at: instant,
  entered_at: instant,
  ended_at: instant.nullable(),
  status: z.enum(['started', 'done', 'missed']),
  equipment: z.array(id),
  by: id,
  reason: text.nullable(),
  note: text.nullable(),
});

const enteredDoc = z.strictObject({ by: id, at: instant });

export const dayFormat = 'holdproof_day/1';

export const daySchema = z.strictObject({
  format: z.literal(dayFormat),
  site: z.strictObject({
    id: text,
    name: text,
    address: text.nullable(),
    zone: text,
    unit,
    clock: z.enum(['12', '24']),
    late_after_min: z.int(),
  }),
  day: localDate,
  from: instant,
  to: instant, // the first instant that is not of the day
  as_of: instant, // the moment of judging: `to`, or earlier when the day is not over
  over: z.boolean(),
  profile: z.strictObject({
    id: text,
    name: text,
    edition: text.nullable(), // null = a profile that this program does not know
    local_changes: z.array(
      z.strictObject({ role: text, section: text, edition: text, entered: enteredDoc.optional() }),
    ),
    /**
     * Who entered a profile that was made on screen, as it was last written; other days have no such member. A change
     * that somebody else had entered, or at another time, names that itself.
     */
    entered: enteredDoc.optional(),
  }),
  people: z.array(z.strictObject({ id, name: text, initials: text, role, title: text.nullable() })),
  equipment: z.array(z.strictObject({ id, name: text, kind: equipmentKind })),
  thermometers: z.array(thermometerDoc),
  batches: z.array(batchDoc),
  air: z.array(readingDoc),
  loose: z.array(readingDoc), // readings that fit no batch
  deviations: z.array(deviationDoc),
  rounds: z.array(roundDoc),
  power_cuts: z.array(
    z.strictObject({
      equipment: id,
      off_at: instant,
      on_at: instant.nullable(),
      by: id.nullable(),
      reason: text,
      since_basis: text.nullable(),
      text: text.nullable(),
    }),
  ),
  notes: z.array(
    z.strictObject({
      id,
      at: instant,
      entered_at: instant,
      by: id,
      batch: id.nullable(),
      piece: z.int().nullable(),
      equipment: id.nullable(),
      thermometer: id.nullable(),
      could_not: couldNot.nullable(),
      text,
      lang: language,
    }),
  ),
  handovers: z.array(
    z.strictObject({
      id,
      at: instant,
      by: id,
      from: id.nullable(),
      to: id,
      open_items: z.array(text),
      text: text.nullable(),
      lang: language,
    }),
  ),
  late: z.array(
    z.strictObject({
      id,
      seq: z.int(),
      kind: text,
      at: instant,
      entered_at: instant,
      by: id,
      reason: text.nullable(),
    }),
  ),
  amendments: z.array(
    z.strictObject({
      id,
      seq: z.int(),
      at: instant,
      by: id,
      target: id,
      target_kind: text.nullable(),
      target_at: instant.nullable(),
      field: text,
      from: text,
      to: text,
      reason: text,
    }),
  ),
  not_shown: z.array(
    z.strictObject({
      batch: id,
      run: id,
      step: stepName,
      stage: text,
      pieces,
      section: text,
      open: z.boolean(),
      reasons: z.array(text),
    }),
  ),
  not_judged: z.array(z.strictObject({ batch: id, run: id, step: stepName, reason: text })),
  odd: z.array(
    z.strictObject({ entry: text, at: instant, key: text, values: z.record(text, z.union([text, number])) }),
  ),
});

export type CanonicalDay = z.infer<typeof daySchema>;
export type BatchDoc = z.infer<typeof batchDoc>;
export type RunDoc = z.infer<typeof runDoc>;
export type StageDoc = z.infer<typeof stageDoc>;
export type ReadingDoc = z.infer<typeof readingDoc>;
export type LineDoc = z.infer<typeof lineDoc>;
export type DeviationDoc = z.infer<typeof deviationDoc>;
export type ThermometerDoc = z.infer<typeof thermometerDoc>;
export type RoundDoc = z.infer<typeof roundDoc>;
