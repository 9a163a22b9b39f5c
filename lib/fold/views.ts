import type { Stage, StageName, Verdict } from '#lib/judge/answer.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';
import type { Spot, StepName } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import type { UseBy } from './use-by.ts';

/**
 * What screens are given: flat, serialisable, nothing to compute. Instants are ms (UTC). Words are added by the
 * screen from message keys.
 */

/** A stretch of the proof line (docs/look.md 3.1). `seen` says nothing about temperature between two looks. */
export type Stretch = {
  kind: 'seen' | 'nobody_looked' | 'under' | 'ahead' | 'suspect';
  from: number;
  to: number;
  /** `seen` only: by a logger at the coldest place all the time, or by hand at its two ends (missing = by hand). */
  witness?: 'hand' | 'logger';
};

/** The proof line of one run: stretches, ticks (looks) and the post (next due). Over the limit for cold food. */
export type Line = {
  from: number;
  to: number; // right edge of the axis
  side?: 'under' | 'over'; // of the limit that is out of it; over for cold food (missing = under)
  now: number | null;
  stretches: Stretch[];
  looks: {
    at: number;
    value: number;
    unit: Unit;
    spot: Spot | null;
    piece: number | null;
    good: boolean;
    suspect: boolean;
  }[];
  dueAt: number | null;
  /** Lengths, minutes; counted to the last look while the step goes on. */
  seenMin: number;
  nobodyLookedMin: number;
  underLongestMin: number | null;
  underShortestMin: number | null;
};

export type ShownFigure = {
  value: number;
  typed: string;
  unit: Unit;
  at: number;
  by: string; // initials
  spot: Spot | null;
  piece: number | null;
  dress: 'solid' | 'hollow' | 'cut' | 'wavy'; // in time, old, under/over the limit, suspect
};

export type RowState = 'under' | 'blocked' | 'overdue' | 'due' | 'cooling' | 'off' | 'quiet';

/** One group of food in a piece of equipment. */
export type RowGroup = {
  run: string;
  batch: string;
  batchName: string;
  food: string;
  step: StepName;
  pieces: number[] | null;
  blocked: number[]; // pieces that must not be served
  allBlocked: boolean;
  figure: ShownFigure | null; // of the coldest (or warmest) piece at its last look
  watchPiece: number | null;
  verdict: { stage: StageName; verdict: Verdict; section: string; open: boolean } | null;
  since: number | null; // broken: since when at worst; else start of the gap
  line: Line;
  dueAt: number | null;
  latestAt: number | null;
  /** Cold food whose last day is today or past; null or missing = the date mark asks nothing today. */
  useBy?: UseBy | null;
  deadline: { at: number; stage: StageName; section: string } | null;
};

/** One piece of equipment on kitchen now. */
export type Row = {
  equipment: string | null; // null = food whose place is not said
  name: string | null;
  kind: EquipmentKind | null;
  state: RowState;
  groups: RowGroup[];
  air: ShownFigure | null;
  offSince: number | null;
};

/**
 * The one next action, worst first. Message key under `next`. `values`, all by name and ready for words: decide
 * {batch, pieces, equipment, probe}; read_every_piece {equipment, count}; reach_by {batch, value, unit, minutes};
 * round_due and round_overdue {equipment, looks}; confirm_phone {batch, count}; check_probe {probe, colour};
 * use_today and past_its_day {batch, day}. '' where
 * there is none.
 */
export type NextAction = {
  key:
    | 'decide'
    | 'read_every_piece'
    | 'reach_by'
    | 'round_overdue'
    | 'round_due'
    | 'confirm_phone'
    | 'check_probe'
    | 'use_today'
    | 'past_its_day';
  by: number | null;
  values: Record<string, string | number>;
  href: string;
};

export type KitchenNow = {
  asOf: number;
  next: NextAction[]; // worst first
  rows: Row[]; // worst first
  round: RoundDue | null;
  openDeviations: number;
  undecided: number;
};

export type RoundDue = {
  dueAt: number; // earliest due pulls all
  promptAt: number; // 20 minutes before the interval ends
  pressAt: number; // 5 minutes before
  latestAt: number;
  state: 'quiet' | 'prompted' | 'pressed' | 'overdue';
  equipment: number;
  looks: number; // figures that the plan asks for
};

/** One figure that the round asks for. */
export type RoundLook = {
  equipment: string;
  equipmentName: string;
  batch: string | null; // null = air
  batchName: string | null;
  food: string | null;
  step: StepName | null;
  piece: number | null;
  pieceOf: number | null; // "3 of 8"
  spots: Spot[]; // the save keys, in order
  asked: Spot[]; // of those, what the plan asks for
  last: { at: number; by: string; figures: { spot: Spot | null; typed: string; unit: Unit }[] } | null; // shown after saving
  limit: { value: number; unit: Unit; comparison: 'at_or_above' | 'at_or_below'; section: string } | null;
  asksHeld: number | null; // seconds asked in one tap ("stayed 15 s?"); null = not asked
  blocked: boolean;
};

export type RoundPlan = {
  looks: RoundLook[];
  equipment: { id: string; name: string; looks: number }[];
  due: RoundDue | null;
};

/** A rule's verdict on the batch page: one row a rule, worst first. */
export type RuleRow = {
  run: string;
  step: StepName;
  stage: StageName;
  pieces: number[] | null;
  equipment: string | null;
  judged: Stage;
  byPiece: { piece: number | null; judged: Stage }[];
  thickPartOnly: boolean; // kept at the thick part only
};
