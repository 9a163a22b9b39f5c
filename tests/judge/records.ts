import type { JudgedReading, StepRecord } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { FoodClass } from '#shared/entries/food.ts';

/** Noon of an invented day; records count in minutes from it. */
export const noon = Date.parse('2026-05-08T12:00:00-05:00');
export const at = (minutes: number): number => noon + minutes * 60_000;

const found = profile('fda_2022');
if (found === null) throw new Error('tests: fda_2022 is missing');
export const fda: Profile = found;

export type Told = Partial<Omit<JudgedReading, 'at' | 'value'>>;

/** A reading so many minutes after noon: °F at the thin end or the thick part, as the record's rule likes it. */
export const reading = (minutes: number, value: number, told: Told = {}): JudgedReading => ({
  at: at(minutes),
  value,
  unit: 'degF',
  spot: 'core',
  piece: null,
  probe: null,
  held_s: null,
  source: 'hand',
  suspect: false,
  correction: null,
  ...told,
});

type Asked = Partial<Omit<StepRecord, 'readings' | 'asOf' | 'food'>> & {
  asOf?: number;
  class?: FoodClass;
  pieces?: number | null;
};

/** A record of these readings, seen at its last one unless told otherwise; the step goes on. */
export const record = (readings: readonly JudgedReading[], asked: Asked = {}): StepRecord => ({
  food: { class: asked.class ?? 'beef_whole', pieces: asked.pieces ?? null },
  facts: asked.facts ?? {},
  planIntervalMin: asked.planIntervalMin ?? null,
  start: asked.start ?? null,
  end: asked.end ?? null,
  asOf: asked.asOf ?? readings.reduce((last, one) => Math.max(last, one.at), noon),
  readings,
});
