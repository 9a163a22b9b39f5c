import { conventions } from '#lib/limits/conventions.ts';
import { low } from './compare.ts';
import { provesHeated } from './evidence.ts';
import type { JudgedReading, StepRecord } from './record.ts';

/** One moment at which a piece was read while it was heated, against one target. */
export type Look = {
  at: number;
  /** Proving readings at or above the target; empty when a reading of the same moment was below it. */
  reached: number[];
  /** Readings of any spot below the target. */
  below: number[];
};

/** The piece's looks in order of time; all readings of one moment are one look, for none is before the other. */
export function looksAt(
  record: StepRecord,
  readings: readonly number[],
  isReached: (reading: JudgedReading) => boolean,
): Look[] {
  const looks: Look[] = [];
  for (const index of readings) {
    const reading = record.readings[index];
    if (reading === undefined) continue;
    let look = looks.at(-1);
    if (look === undefined || look.at !== reading.at) {
      look = { at: reading.at, reached: [], below: [] };
      looks.push(look);
    }
    if (!isReached(reading)) look.below.push(index);
    else if (!reading.suspect && provesHeated(reading.spot)) look.reached.push(index);
  }
  for (const look of looks) if (look.below.length > 0) look.reached.length = 0;
  return looks;
}

/** At or above the line, typed and corrected both. */
export const reaches =
  (target: { degF: number; degC: number }) =>
  (reading: JudgedReading): boolean =>
    low(reading) >= target[reading.unit];

/** The first look at which the seconds were noted, or with none demanded the first at the target. */
export const noted = (record: StepRecord, looks: readonly Look[], heldS: number): Look | null =>
  looks.find((look) =>
    look.reached.some((index) => heldS === 0 || (record.readings[index]?.held_s ?? -1) >= heldS),
  ) ?? null;

/**
 * The first look of a run of looks at the target that comes at least `heldS` seconds after the run's first. A look
 * below the target ends a run, and so does a gap of more than `gapMin` minutes.
 */
export function foundAgain(looks: readonly Look[], heldS: number, gapMin: number): Look | null {
  let from: number | null = null;
  let last = 0;
  for (const look of looks) {
    if (look.below.length > 0) from = null;
    if (look.reached.length === 0) continue;
    if (from === null || look.at - last > gapMin * 60_000) from = look.at;
    last = look.at;
    if (look.at - from >= heldS * 1000) return look;
  }
  return null;
}

/** Whether some look at the target has a reading whose seconds nobody noted. */
export const hasUnnoted = (record: StepRecord, looks: readonly Look[]): boolean =>
  looks.some((look) => look.reached.some((index) => record.readings[index]?.held_s === null));

/** The last look, when the step ended no more than a look later and it found the piece below; else null. */
export function belowAtTheEnd(looks: readonly Look[], end: number | null): Look | null {
  const last = looks.at(-1);
  if (end === null || last === undefined || last.below.length === 0) return null;
  return end - last.at <= conventions.last_look_min * 60_000 ? last : null;
}
