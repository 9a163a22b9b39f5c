import type { Spot } from '#shared/entries/step-name.ts';
import type { Span } from './evidence.ts';
import { type HeldTo, isBeyond, lineOf } from './held-to.ts';
import type { StepRecord } from './record.ts';

/** How long a piece was beyond its limit, below a hot one or above a cold one: in ms. `unnatural`: at some moment only a spot that is not natural was seen below. */
export type Below = { longest: number; shortest: number; unnatural: boolean; bad: number[] };

const spots: readonly (Spot | null)[] = ['coldest', 'edge', 'core', 'surface', 'warmest', null];
const bitOf = (spot: Spot | null): number => 1 << spots.indexOf(spot);

/** Runs of bad readings of one spot. A run ends at the first good look after it; -1 = no run, or no good look yet. */
type Run = { from: number; last: number; before: number; lastGood: number };

type Watch = { below: Below; runs: Run[]; at: number; bad: number; good: number; natural: boolean };

const newWatch = (start: number): Watch => ({
  below: { longest: 0, shortest: 0, unnatural: false, bad: [] },
  runs: spots.map(() => ({ from: -1, last: -1, before: -1, lastGood: start })),
  at: -1,
  bad: 0,
  good: 0,
  natural: false,
});

function endRun(below: Below, run: Run, at: number): void {
  below.longest = Math.max(below.longest, at - run.before);
  below.shortest = Math.max(below.shortest, run.last - run.from);
  run.from = -1;
}

/**
 * Takes one moment, all its readings together, for none of them is before the other. A good look is one of the
 * same spot or of the place that goes first: a warm core does not show that the thin end is warm again. A spot that was seen
 * both good and bad at one moment was bad.
 */
function closeMoment(watch: Watch, surest: number): void {
  watch.runs.forEach((run, spot) => {
    const isBad = (watch.bad >> spot) & 1;
    if (isBad) {
      if (run.from < 0) {
        run.from = watch.at;
        run.before = run.lastGood;
      }
      run.last = watch.at;
    } else if (watch.good & ((1 << spot) | surest)) {
      if (run.from >= 0) endRun(watch.below, run, watch.at);
      run.lastGood = watch.at;
    }
  });
  if (watch.bad !== 0 && !watch.natural) watch.below.unnatural = true;
  watch.bad = 0;
  watch.good = 0;
  watch.natural = false;
}

/**
 * The lengths below the limit of the pieces that broke it (docs/judge.md 4.1). Longest: from the last good look
 * before a run (or the step's start) to the first after it (or the end, or as_of). Shortest: first to last
 * reading of a run: what was looked at, not a proof that it stayed below in between.
 */
export function below(
  record: StepRecord,
  seen: Span,
  to: HeldTo,
  broken: readonly (number | null)[],
): ReadonlyMap<number | null, Below> {
  const { side } = to;
  const surest = bitOf(side.surest);
  const watches = new Map(broken.map((piece) => [piece, newWatch(seen.start ?? 0)]));
  for (let place = seen.first; place < seen.stop; place++) {
    const index = seen.order === null ? place : (seen.order[place] ?? 0);
    const reading = record.readings[index];
    const watch = reading === undefined ? undefined : watches.get(reading.piece);
    if (reading === undefined || watch === undefined || reading.spot === 'air') continue;
    if (watch.at !== reading.at) {
      closeMoment(watch, surest);
      watch.at = reading.at;
    }
    const value = side.value(reading);
    if (!isBeyond(side, lineOf(to, reading.spot), value, reading.unit)) {
      if (!reading.suspect && reading.spot !== side.onlyBreaks) watch.good |= bitOf(reading.spot);
    } else if (to.disputedFrom === null || value < to.disputedFrom[reading.unit]) {
      watch.bad |= bitOf(reading.spot);
      watch.below.bad.push(index);
      if (side.natural(reading.spot)) watch.natural = true;
    }
  }
  return new Map([...watches].map(([piece, watch]) => [piece, closed(watch, surest, seen.until)]));
}

function closed(watch: Watch, surest: number, until: number): Below {
  closeMoment(watch, surest);
  for (const run of watch.runs) if (run.from >= 0) endRun(watch.below, run, until);
  watch.below.bad.sort((a, b) => a - b);
  return watch.below;
}
