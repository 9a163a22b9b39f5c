import type { FoodClass } from '#shared/entries/food.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import type { Verdict } from './answer.ts';

/** A reading as the judge takes it. `at` is in ms since 1970 (UTC); see docs/judge.md, section 2. */
export type JudgedReading = {
  at: number;
  value: number;
  unit: Unit;
  spot: Spot | null;
  piece: number | null; // null = the batch
  probe: string | null;
  held_s: number | null; // null = not noted
  source: 'hand' | 'logger';
  suspect: boolean;
  correction: number | null; // degrees to add
  accuracy?: number | null; // of its probe in the reading's unit; null or missing = 2 °F or 1 °C
};

export type Facts = {
  roast_cook?: Verdict | 'none' | undefined; // may this roast be held at the lower figure
  route?: 'conventional' | 'microwave' | 'commercial' | 'roast' | 'immediate' | undefined;
  covered?: boolean | null | undefined;
  stirred?: boolean | null | undefined;
  stood_s?: number | null | undefined;
  ingredients?: 'cooked' | 'ambient' | undefined;
  prepared_at?: number | null | undefined; // ms
  oven?: 'still_dry' | 'convection' | 'high_humidity' | 'pit' | null | undefined;
  oven_temp?: number | null | undefined; // °F
  mass_lb?: number | null | undefined;
  method?: string | undefined;
  /** Cooling by a method without a clock (where a profile has one): its conditions as noted. */
  uncovered_protected?: boolean | null | undefined;
  unit_air?: number | null | undefined; // °F
  layer_in?: number | null | undefined;
  intact_in?: number | null | undefined;
  /** Time instead of temperature. Instants are ms. */
  mode?: '4h' | '6h' | undefined;
  removed_at?: number | null | undefined;
  written_procedure?: boolean | null | undefined;
  marked?: boolean | null | undefined;
  gone_at?: number | null | undefined;
  starts_as?: 'produce_cut' | 'package_opened' | null | undefined;
  /** Non-continuous cooking. Instants are ms. */
  heat_from?: number | null | undefined;
  heat_to?: number | null | undefined;
  final_from?: number | null | undefined;
  written?: boolean | null | undefined;
  approved?: boolean | null | undefined;
};

/** Everything that the judge sees of one step: a group of pieces in one place. It reads no clock: `asOf` is given. */
export type StepRecord = {
  food: { class: FoodClass; pieces: number | null };
  facts: Facts;
  planIntervalMin: number | null;
  start: number | null;
  end: number | null;
  asOf: number;
  readings: readonly JudgedReading[]; // in any order; those before `start` may be among them
};

/** The kinds of step that have a rule of their own. */
export type RuleKind =
  | 'hot_hold'
  | 'cooling'
  | 'reheat'
  | 'cook'
  | 'cold_hold'
  | 'time_control'
  | 'noncontinuous';
