import type { Spot, StepName } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';

/**
 * The shape of night.json: one invented night of an invented kitchen, every event of it. Its ids are short names
 * ("e0298", "BR-A", "cab2"); `notes` and `expected_findings` in it are for tests and readers.
 */
type EventHead = { id: string; at: string; entered_at: string; by: string };

export type NightBatch = EventHead & {
  kind: 'batch';
  batch: string;
  food: string;
  pieces: number | null;
  source?: { batch?: string; pieces?: number[] | null; other_sheet?: string }[] | null;
  note: string;
};
export type NightStep = EventHead & {
  kind: 'step';
  batch: string;
  step: StepName;
  equipment: string | null;
  pieces: number[] | null;
  details: Record<string, unknown>;
};
export type NightReading = EventHead & {
  kind: 'reading';
  batch: string | null;
  piece: number | null;
  equipment: string | null;
  spot: Spot;
  typed: string;
  value: number;
  unit: Unit;
  probe: string;
  held_s: number | null;
  round: string | null;
  late_reason?: string;
};
export type NightCheck = EventHead & {
  kind: 'probe_check';
  probe: string;
  method: 'ice_point';
  typed: string;
  value: number;
  unit: Unit;
  expected: number;
  allowed_error: number;
};
export type NightRound = EventHead & {
  kind: 'round';
  round: string;
  planned_at: string;
  status: 'done' | 'missed';
  equipment: string[];
  ended_at: string | null;
  reason?: string;
  note?: string;
  text?: string;
};
export type NightPower = EventHead & {
  kind: 'equipment_off' | 'equipment_on';
  equipment: string;
  reason: string;
  since_basis?: string;
  text?: string;
};
export type NightDeviation = EventHead & {
  kind: 'deviation';
  batch: string | null;
  pieces: number[] | null;
  step: StepName | null;
  equipment: string | null;
  probe?: string;
  limit: { section: string; value: number; unit: Unit; within_min?: number };
  found: string;
  last_good: string | null;
  since: string | null;
  since_basis: string;
  text: string;
  lang: 'en' | 'es';
};
export type NightAction = EventHead & {
  kind: 'corrective_action';
  deviation: string;
  batch: string | null;
  pieces: number[] | null;
  action:
    | 'tag_and_hold'
    | 'reheat'
    | 'reheat_done'
    | 'recook'
    | 'discard'
    | 'repair'
    | 'retrain'
    | 'take_out_of_service';
  decided_by: string;
  decided_how: string;
  condition: string | null;
  disposition: string;
  text: string;
  lang: 'en' | 'es';
};
export type NightAmendment = EventHead & {
  kind: 'amendment';
  target: string;
  field: 'value';
  from: string;
  to: string;
  reason: string;
};
export type NightNote = EventHead & {
  kind: 'note';
  text: string;
  lang: 'en' | 'es';
  batch?: string;
  probe?: string;
};
export type NightHandover = EventHead & {
  kind: 'handover';
  from: string;
  to: string;
  open_items: string[];
  text: string;
  lang: 'en' | 'es';
};
export type NightSignature = EventHead & {
  kind: 'signature';
  sheet: string;
  covers: { from: string; to: string };
  meaning: string;
  open_items: { ref: string; decision: string }[];
};

export type NightEvent =
  | NightBatch
  | NightStep
  | NightReading
  | NightCheck
  | NightRound
  | NightPower
  | NightDeviation
  | NightAction
  | NightAmendment
  | NightNote
  | NightHandover
  | NightSignature;

export type NightPerson = {
  id: string;
  name: string;
  role: string;
  person_in_charge?: boolean;
  languages: ('en' | 'es')[];
};
export type NightEquipment = { id: string; name: string; kind: string; set_F?: number; note?: string };
export type NightProbe = {
  id: string;
  tag_colour: string;
  type: string;
  scale: Unit;
  step: number;
  accuracy: number;
  home: string;
};
export type NightFood = {
  id: string;
  name: string;
  name_es: string;
  class: string;
  plan: string;
  note?: string;
};
export type NightPlan = {
  id: string;
  step: string;
  equipment?: string[];
  every_min?: number | null;
  max_gap_min?: number;
  max_min?: number;
  checkpoints_min?: number[];
  spots?: string[];
  at?: string;
  who: string;
  procedure?: string;
  planned?: string[];
};

export type Night = {
  site: {
    name: string;
    town: string;
    county: string;
    zone: string;
    altitude_m: number;
    unit: Unit;
    day_starts: string;
    as_of: string;
  };
  people: NightPerson[];
  equipment: NightEquipment[];
  probes: NightProbe[];
  foods: NightFood[];
  plan: NightPlan[];
  events: NightEvent[];
};
