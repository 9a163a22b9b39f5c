import { msOf } from '#shared/time.ts';
import type { BatchDoc, CanonicalDay, LineDoc, RunDoc } from './day-schema.ts';
import type { Exception } from './exceptions.ts';
import type { DrawnLine } from './line-geometry.ts';

/** Heating proves itself at its end, not by looks in between: no line. */
const drawnSteps = new Set([
  'rest',
  'hot_hold',
  'service',
  'transport',
  'cooling',
  'cold_hold',
  'time_control',
]);

export type LineRow = { batch: BatchDoc; run: RunDoc; line: LineDoc };

/** The steps of the day that have a line of their own, in the order of the night. */
export const linesOf = (day: CanonicalDay): LineRow[] =>
  day.batches.flatMap((batch) =>
    batch.runs.flatMap((run) =>
      drawnSteps.has(run.step) && run.line ? [{ batch, run, line: run.line }] : [],
    ),
  );

/** Where on a run's line the exceptions that speak of it have their tags. */
export const tagsOn = (exceptions: readonly Exception[], run: RunDoc): { tag: number; at: number }[] =>
  tagsOf(exceptions, run)
    .map((one) => ({ tag: one.tag, at: tagAt(one, run) }))
    .filter((one): one is { tag: number; at: number } => one.at !== null)
    .sort((a, b) => a.at - b.at);

const tagsOf = (exceptions: readonly Exception[], run: RunDoc): Exception[] =>
  exceptions.filter((one) =>
    'gaps' in one ? one.gaps.some((gap) => gap.run.id === run.id) : 'run' in one && one.run?.id === run.id,
  );

/** Where the tag of an exception stands: at the finding, or in the middle of the gap. */
function tagAt(one: Exception, run: RunDoc): number | null {
  if ('gaps' in one) {
    const gap = one.gaps.find((each) => each.run.id === run.id);
    return gap?.from && gap.to ? (msOf(gap.from) + msOf(gap.to)) / 2 : null;
  }
  const found = one.deviations[0]?.found_at;
  if (found) return msOf(found);
  return one.kind === 'broken' && one.judged.first_bad ? msOf(one.judged.first_bad) : null;
}

/** The stored line as the geometry takes it. */
export function drawnLine(line: LineDoc, axis: { from: number; to: number }): DrawnLine {
  return {
    side: line.side,
    from: axis.from,
    to: axis.to,
    now: null,
    stretches: line.stretches.map((one) => ({
      kind: one.kind,
      from: msOf(one.from),
      to: msOf(one.to),
      ...(one.witness === null ? {} : { witness: one.witness }),
    })),
    looks: line.looks.map((look) => ({
      at: msOf(look.at),
      value: look.value,
      unit: look.unit,
      spot: null,
      piece: null,
      good: look.good,
      suspect: look.suspect,
    })),
    dueAt: null,
    seenMin: line.seen_min,
    nobodyLookedMin: line.nobody_looked_min,
    underLongestMin: null,
    underShortestMin: null,
  };
}
