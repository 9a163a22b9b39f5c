import * as z from 'zod';
import { id } from '../ids.ts';
import { instant } from '../time.ts';
import { amendment } from './amendment.ts';
import { batch } from './batch.ts';
import { correctiveAction } from './corrective-action.ts';
import { decision } from './decision.ts';
import { deviation } from './deviation.ts';
import { deviceEnrolled } from './device-enrolled.ts';
import { equipment } from './equipment.ts';
import { equipmentOff } from './equipment-off.ts';
import { equipmentOn } from './equipment-on.ts';
import { erasure } from './erasure.ts';
import { food } from './food.ts';
import { handover } from './handover.ts';
import { limits } from './limits.ts';
import { note } from './note.ts';
import { person } from './person.ts';
import { plan } from './plan.ts';
import { probe } from './probe.ts';
import { probeAdjusted } from './probe-adjusted.ts';
import { probeCheck } from './probe-check.ts';
import { reading } from './reading.ts';
import { retention } from './retention.ts';
import { round } from './round.ts';
import { secretReset, secretSet } from './secret.ts';
import { signature } from './signature.ts';
import { site } from './site.ts';
import { step } from './step.ts';

/** Every kind of entry, by name. A new kind is one file in this folder and its line here and in one fold. */
export const kinds = {
  site,
  person,
  equipment,
  probe,
  food,
  plan,
  batch,
  step,
  reading,
  probe_check: probeCheck,
  probe_adjusted: probeAdjusted,
  round,
  equipment_off: equipmentOff,
  equipment_on: equipmentOn,
  deviation,
  decision,
  corrective_action: correctiveAction,
  amendment,
  note,
  handover,
  signature,
  device_enrolled: deviceEnrolled,
  secret_set: secretSet,
  secret_reset: secretReset,
  limits,
  retention,
  erasure,
} as const;

export type Kind = keyof typeof kinds;
export type Body<K extends Kind> = z.infer<(typeof kinds)[K]['body']>;

export const setUpKinds = [
  'site',
  'person',
  'equipment',
  'probe',
  'probe_adjusted',
  'food',
  'plan',
  'limits',
] as const satisfies readonly Kind[];

/**
 * What is never erased at the end of retention: what the kitchen is, who was who on which device, and what was erased.
 * Later records cannot be read without the first two.
 */
export const lastingKinds = [
  ...setUpKinds,
  'device_enrolled',
  'secret_set',
  'secret_reset',
  'retention',
  'erasure',
] as const satisfies readonly Kind[];

/**
 * What a correction may speak of: what was seen and done. Who may change the set-up, decide or sign is asked of that
 * entry's own hand, so none of these is undone by a correction; the next of its kind says what holds from then on.
 */
export const correctableKinds = [
  'batch',
  'step',
  'reading',
  'probe_check',
  'round',
  'equipment_off',
  'equipment_on',
  'deviation',
  'corrective_action',
  'amendment',
  'note',
  'handover',
] as const satisfies readonly Kind[];

/** How the ledger knows that `by` wrote it: a secret entered on this device this shift, or only a tap on a name. */
export const known = z.enum(['secret', 'tap', 'command_line']);
export type Known = z.infer<typeof known>;

/** What a device sends. Site, device, seq, received_at and known are the server's to say, never the body's. */
export type DraftOf<K extends Kind> = {
  id: string;
  kind: K;
  version: number;
  at: string; // when it was observed
  entered_at: string; // by the device's clock
  by: string; // person id
  body: Body<K>;
};
export type Draft = { [K in Kind]: DraftOf<K> }[Kind];

/** An entry in the book. */
export type EntryOf<K extends Kind> = DraftOf<K> & {
  site: string;
  seq: number; // per site, from 1, without gaps
  received_at: string; // by the server's clock
  known: Known;
  device: string;
};
export type Entry = { [K in Kind]: EntryOf<K> }[Kind];

const draftOf = <K extends Kind>(kind: K) =>
  z.strictObject({
    id,
    kind: z.literal(kind),
    version: z.literal(kinds[kind].version),
    at: instant,
    entered_at: instant,
    by: id,
    body: kinds[kind].body,
  });

/** Schema of one draft, by kind: `draftSchema('reading').safeParse(x)`. The same on the phone and on the server. */
export const draftSchema = (kind: Kind): z.ZodType<Draft> => draftOf(kind) as unknown as z.ZodType<Draft>;

export const isKind = (text: unknown): text is Kind => typeof text === 'string' && Object.hasOwn(kinds, text);
