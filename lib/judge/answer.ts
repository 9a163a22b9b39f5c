import type { Unit } from '#shared/units.ts';

/** What a verdict claims: reference in docs/judge.md, section 1. Never ok, pass, fail or safe. */
export type Verdict = 'kept' | 'not_shown' | 'broken' | 'not_applicable';

export const reasonKeys = [
  'air_only',
  'allowance_not_shown',
  'brackets_too_wide',
  'close_to_limit',
  'coldest_only',
  'disputed',
  'heat_on',
  'hold_time_not_noted',
  'implausible_jump',
  'microwave_care_unknown',
  'no_figure',
  'no_reading',
  'not_reached',
  'preparation',
  'rose_again',
  'some_pieces_unread',
  'spot_not_natural',
  'start_unknown',
  'suspect_only',
  'suspect_reading',
  'warmest_only',
] as const;
export type Reason = (typeof reasonKeys)[number];

export type Comparison = 'at_or_above' | 'above' | 'at_or_below' | 'below';

/** Action keys of `next`: what to do, said in words by the message `next.<action>`. */
export type Action =
  | 'stop_and_tag'
  | 'look_again'
  | 'read_food'
  | 'reach_70'
  | 'reach_41'
  | 'reach_target'
  | 'note_seconds'
  | 'look_by_plan'
  | 'use_by'
  | 'look_by_rule';

/**
 * One stage of one step, judged. Spelt as it leaves the program. Instants are milliseconds since 1970 (UTC)
 * inside the program; `stageJson` writes them as ISO text. Lengths are minutes, unrounded; null = not known.
 */
export type Stage = {
  verdict: Verdict;
  /** The step goes on and a later reading could still make it kept (holding: kept so far, and goes on). */
  open: boolean;
  section: string;
  limit: { value: number; unit: Unit; comparison: Comparison } | null;
  limit_min: number | null;
  longest_min: number | null;
  shortest_min: number | null;
  deadline: number | null;
  remaining_min: number | null;
  reasons: Reason[]; // sorted by name
  next: { action: Action; by: number | null } | null;
  /** Indices, in the record's readings, of those that decide. */
  rests_on: number[];
  first_bad?: number | null;
  below_longest_min?: number | null;
  below_shortest_min?: number | null;
  above_longest_min?: number | null; // the same of cold holding
  above_shortest_min?: number | null;
  longest_gap_min?: number | null;
  /** Of a date mark: the last local day on which it may be kept, "2026-10-22"; null = not known, or it is frozen. */
  last_day?: string | null;
  /** Ids of exceptions or defences that the profile names: beside a broken hold, and softening nothing. */
  defences?: string[];
  pieces_read?: number;
};

export type StageName =
  | 'at_readings'
  | 'between_readings'
  | 'house_plan_interval'
  | 'record_interval'
  | 'hold_length'
  | 'stage_1'
  | 'stage_2'
  | 'total'
  | 'ambient_total'
  | 'temperature'
  | 'time'
  | 'oven'
  | 'come_up'
  | 'procedure'
  | 'marking'
  | 'start'
  | 'warmth'
  | 'initial_heating'
  | 'cooling'
  | 'final_cook'
  | 'date_mark';

export type Stages = Partial<Record<StageName, Stage>>;
