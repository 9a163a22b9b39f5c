import type { Action, Stages } from '#lib/judge/answer.ts';
import type { JudgedReading, RuleKind, StepRecord } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body, Entry, EntryOf } from '#shared/entries/entry.ts';
import type { LimitsRole } from '#shared/entries/limits.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import type { Conflict } from './conflicts.ts';
import type { Marked } from './marked.ts';

/**
 * The shapes that the folds yield. All of them are plain data computed from entries, and can be thrown away.
 * Instants are ms since 1970 (UTC). Ids are those of the entries' bodies (person, equipment, batch …).
 */

/** Who wrote something of the set-up, when (ms), in which entry. */
export type WrittenBy = { by: string; at: number; entry: string };

/**
 * A profile made on screen, as it was last written: by whom, when, in which entry. `since`: of each change, the entry
 * since which it stands as it does, so that who wrote it stays named when somebody else changes another figure.
 */
export type LocalLimits = WrittenBy & {
  body: Body<'limits'>;
  since?: ReadonlyMap<LimitsRole, WrittenBy>;
};

/** The set-up in force: the last entry of each thing, amendments applied. */
export type Kitchen = {
  site: Body<'site'> | null; // null = nothing set up yet
  people: ReadonlyMap<string, Body<'person'>>;
  equipment: ReadonlyMap<string, Body<'equipment'>>; // in the order of the walk
  probes: ReadonlyMap<string, Body<'probe'>>;
  /** Of each thermometer the last adjustment, if there was one. */
  adjusted?: ReadonlyMap<string, WrittenBy & { body: Body<'probe_adjusted'> }>;
  foods: ReadonlyMap<string, Body<'food'>>;
  plans: ReadonlyMap<string, Body<'plan'>>;
  limits: ReadonlyMap<string, LocalLimits>; // profiles made on screen, by id
};

/** A reading as it stands now: amendments applied, suspect marks set, the entry as written beside it. */
export type Look = JudgedReading & {
  id: string; // entry id
  seq: number;
  batch: string | null;
  equipment: string | null;
  by: string;
  typed: string; // as it is meant now
  enteredAt: number;
  late: boolean; // typed more than the site's `late_after_min` after its look
  round: string | null;
  amended: { from: string; to: string; field: string; reason: string; by: string; at: number } | null;
};

/** One piece's own stay in a run: it may come later and leave earlier than the others. */
export type Member = {
  piece: number | null; // null = not counted
  from: number;
  until: number | null; // null = it is still there
  entry: string; // id of the step entry that began this piece's step
  details: Body<'step'>['details']; // what that entry said
  massLb: number | null; // of this piece as it went in, where the entry says it
};

/** One group of pieces of a batch in one step and one place, from start to end: what the judge judges. */
export type Run = {
  key: string; // id of the step entry that began it
  batch: string;
  step: StepName;
  pieces: number[] | null; // null = not counted
  equipment: string | null; // where it is now, or was last
  places: { equipment: string | null; at: number }[];
  members: Member[]; // every piece that was in it
  start: number;
  end: number | null; // null = it goes on
  details: Body<'step'>['details']; // the last that was said, earlier members kept
  looks: Look[]; // of the step, in order of time, `air` of its equipment not included
  before: Look[]; // each piece's last food readings before the step (cooling and reheat look at them)
  planIntervalMin: number | null;
};

/** A run with its verdicts. `byPiece` holds each piece's own; `stages` is the group's. {} = no rule speaks of it. */
export type JudgedRun = Run & {
  stages: Stages;
  byPiece: { piece: number | null; stages: Stages }[];
  /** Why there are no stages: a key of docs/judge.md section 5. */
  reason: 'preparation' | 'no_figure' | 'no_reading' | null;
  /** Of food held cold: what its date marks were counted from, piece by piece. */
  marked?: { piece: number | null; marked: Marked; today: string }[]; // `today`: the local day that was judged
  /** What the judge was asked for each piece that its stages rest on, so that a proof can ask it again. */
  asked?: { kind: RuleKind; records: StepRecord[] };
};

export type Standing = 'serve' | 'do_not_serve' | 'gone';

export type Piece = {
  number: number | null; // null = the batch is not counted
  standing: Standing;
  step: StepName | null;
  equipment: string | null;
  since: number | null;
  lastLook: Look | null; // last food reading, any spot
  lastGood: Look | null; // last proving reading at or above (or below) its limit
  lowest: Look | null; // of the present step (warmest for cooling and cold hold)
  end: { at: number; reason: string; amount: string | null; by: string } | null; // when gone
};

export type Batch = {
  id: string;
  name: string;
  food: Body<'food'> | null;
  foodId: string;
  made: Body<'batch'>['made'];
  source: Body<'batch'>['source'];
  note: string | null;
  at: number;
  count: number | null; // how many pieces it was made with
  pieces: Piece[];
  runs: JudgedRun[]; // in order of start
  watchPiece: number | null; // the coldest of the present hold
  /** Steps that two devices wrote without knowing of each other, and nobody has settled yet. */
  conflicts?: Conflict[];
  open: boolean; // some piece is not gone
};

export type DeviationState = 'open' | 'decided' | 'closed';

/** A deviation, whoever opened it. */
export type Deviation = {
  ref: string; // see shared/entries/deviation.ts
  /** Keys of what the judge opened about the same food, where a person opened it too: refs to them mean this one. */
  aliases: string[];
  opened: 'by_the_judge' | 'by_hand';
  entry: EntryOf<'deviation'> | null; // when opened by hand
  batch: string | null;
  pieces: number[] | null;
  step: StepName | null;
  stage: string | null;
  run: string | null; // key of the run
  equipment: string | null;
  probe: string | null;
  section: string | null;
  foundAt: number;
  found: Look | null;
  lastGood: Look | null; // the last good look before it: the worst case of "since when"
  since: number | null; // null = nobody knows
  untilAt: number | null; // when it was put right: good look of the same spot, discard, end; null = not yet
  outLongestMin: number | null; // until it was put right (or as_of); null = not known
  outShortestMin: number;
  actions: EntryOf<'corrective_action'>[];
  decisions: EntryOf<'decision'>[];
  /** What became of each piece; a deviation closes only when each has an end. */
  ends: {
    batch: string | null; // another than the deviation's own: made of its pieces since
    piece: number | null;
    end: 'released' | 'reheated' | 'discarded' | 'gone' | 'no_food' | null;
    at: number | null;
    by: string | null;
  }[];
  /** Entries that wrote down a decision by phone which its maker has not confirmed yet. */
  unconfirmed: string[];
  state: DeviationState;
};

export type Check = {
  entry: EntryOf<'probe_check'>;
  probe: string;
  at: number;
  verdict: 'kept' | 'broken';
  reads: 'high' | 'low' | null;
  section: string; // of the figure that it was held to
  suspect: string[]; // ids of the readings that it makes suspect
};

/** What did not fit while folding: said in words, never thrown. Message key under `odd`, with its values. */
export type Odd = { entry: string; at: number; key: string; values: Record<string, string | number> };

/**
 * The profile by which a book is judged. `profile` null: the kitchen names one that is not known (`id` says which).
 * `local`: it was made on screen; then `published` is the profile that it extends.
 */
export type LimitsInForce = {
  id: string;
  profile: Profile | null;
  local: LocalLimits | null;
  published: Profile | null;
};

/** Everything that one load of entries says, as of one moment. */
export type Book = {
  asOf: number;
  kitchen: Kitchen;
  limits: LimitsInForce;
  batches: ReadonlyMap<string, Batch>;
  deviations: Deviation[]; // newest first
  air: ReadonlyMap<string, Look[]>; // equipment id → its air readings in order
  looks: ReadonlyMap<string, Look>; // every reading that is seen, by entry id
  rounds: EntryOf<'round'>[];
  checks: Check[];
  suspect: ReadonlySet<string>; // ids of suspect readings
  off: ReadonlyMap<string, { at: number; reason: string; until: number | null }[]>; // equipment id → power cuts
  notes: EntryOf<'note'>[];
  handovers: EntryOf<'handover'>[];
  signatures: EntryOf<'signature'>[];
  amendments: ReadonlyMap<string, EntryOf<'amendment'>[]>; // entry id → its amendments
  struck: ReadonlyMap<string, Entry>; // taken back, as they were written: remembered, counted nowhere
  entries: ReadonlyMap<string, Entry>; // every entry that was given, as it was written
  odd: Odd[];
};

/** What is due, by the plan. `dueAt` = interval since the last look; `latestAt` = "at most". */
export type Due = {
  run: string;
  batch: string;
  equipment: string | null;
  dueAt: number | null;
  latestAt: number | null;
  /** The judge's own deadline of a cooling or reheat, with its action; null where there is none. */
  deadline: { at: number; action: Action } | null;
};
