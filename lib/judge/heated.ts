import { conventions } from '#lib/limits/conventions.ts';
import { low } from './compare.ts';
import { atMoment, provesHeated } from './evidence.ts';
import type { StepRecord } from './record.ts';

/** A target of heating, and the time for which it must be held. */
export type Target = {
  degF: number;
  degC: number;
  heldS: number; // 0 = no seconds demanded
  gapMin: number; // the longest gap between two looks of one run
};

/** What a piece's looks show against one target. Instants in ms; null = none. */
export type Heated = {
  /** First look at the target at which the seconds were noted; with none demanded, the first at the target. */
  notedAt: number | null;
  /** First look of a run of looks at the target that comes at least the seconds after the run's first. */
  foundAgainAt: number | null;
  firstAt: number | null; // first look at the target, seconds or not
  lastBelowAt: number | null; // last reading below it before `firstAt`, or of all where none was at it
  mostHeld: number; // the most seconds noted at a look at the target; 0 = none
  unnoted: boolean; // some look at the target whose seconds nobody noted
  lastAt: number | null; // the last look of any kind
  isLastBelow: boolean; // it found the piece below the target
};

/**
 * One pass over the piece's looks. All readings of one moment are one look; it is at the target when a proving
 * reading is at or above it and no reading of any spot is below. A look below ends a run, and so does a long gap.
 */
export function heated(record: StepRecord, looks: readonly number[], target: Target): Heated {
  const { readings } = record;
  const { degF, degC, heldS } = target;
  const [heldMs, gapMs] = [heldS * 1000, target.gapMin * 60_000];
  const shown: Heated = {
    notedAt: null,
    foundAgainAt: null,
    firstAt: null,
    lastBelowAt: null,
    mostHeld: 0,
    unnoted: false,
    lastAt: null,
    isLastBelow: false,
  };
  let runFrom = Number.NaN;
  let runLast = Number.NaN;
  for (let place = 0; place < looks.length; ) {
    const { at } = readings[looks[place] ?? -1] ?? { at: Number.NaN };
    let isBelow = false;
    let isReached = false;
    let isUnnoted = false;
    let mostHeld = -1;
    do {
      const reading = readings[looks[place++] ?? -1];
      if (reading === undefined) break;
      const value = reading.correction === null ? reading.value : low(reading);
      if (value < (reading.unit === 'degF' ? degF : degC)) isBelow = true;
      else if (!reading.suspect && provesHeated(reading.spot)) {
        isReached = true;
        if (reading.held_s === null) isUnnoted = true;
        else if (reading.held_s > mostHeld) mostHeld = reading.held_s;
      }
    } while (place < looks.length && readings[looks[place] ?? -1]?.at === at);
    shown.lastAt = at;
    shown.isLastBelow = isBelow;
    if (isBelow) {
      runFrom = Number.NaN;
      if (shown.firstAt === null) shown.lastBelowAt = at;
      continue;
    }
    if (!isReached) continue;
    shown.firstAt ??= at;
    if (isUnnoted) shown.unnoted = true;
    if (mostHeld > shown.mostHeld) shown.mostHeld = mostHeld;
    if (heldS === 0 || mostHeld >= heldS) shown.notedAt ??= at;
    if (Number.isNaN(runFrom) || at - runLast > gapMs) runFrom = at;
    runLast = at;
    if (at - runFrom >= heldMs) shown.foundAgainAt ??= at;
  }
  return shown;
}

/** The readings of a look that are at the target and prove it. */
export const reachedAt = (
  record: StepRecord,
  looks: readonly number[],
  at: number | null,
  target: { degF: number; degC: number },
): number[] =>
  atMoment(record, looks, at).filter((index) => {
    const reading = record.readings[index];
    return (
      reading !== undefined &&
      !reading.suspect &&
      provesHeated(reading.spot) &&
      low(reading) >= target[reading.unit]
    );
  });

/** The readings of a look that are below the target. */
export const belowAt = (
  record: StepRecord,
  looks: readonly number[],
  at: number | null,
  target: { degF: number; degC: number },
): number[] =>
  atMoment(record, looks, at).filter((index) => {
    const reading = record.readings[index];
    return reading !== undefined && low(reading) < target[reading.unit];
  });

/** When the step ended no more than a look after the last one, which found the piece below: that look; else null. */
export function belowAtTheEnd({ lastAt, isLastBelow }: Heated, end: number | null): number | null {
  if (end === null || lastAt === null || !isLastBelow) return null;
  return end - lastAt <= conventions.last_look_min * 60_000 ? lastAt : null;
}

/** The earlier of two instants; null = none. */
export const earlierOf = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.min(a, b);
