import type { JudgedRun } from '#lib/fold/book.ts';
import { lineOf } from '#lib/fold/line.ts';
import type { Line, Stretch } from '#lib/fold/views.ts';
import { minutesBetween } from '#shared/time.ts';
import type { LineDoc } from './day-schema.ts';
import { type DayScope, inDay, iso } from './day-scope.ts';

/** The proof line of a run as far as it lies inside the day; null when nobody looked at it in the day. */
export function lineDocOf(scope: DayScope, run: JudgedRun): LineDoc | null {
  const line = lineOf(scope.book, run);
  const looks = line.looks.filter((look) => inDay(scope, look.at));
  if (looks.length === 0) return null;
  const stretches = insideDay(scope, line);
  // While the step goes on, lengths are counted to the last look (docs/look.md 3.1).
  const goesOn = run.end === null || run.end > scope.frame.asOf;
  const counted = goesOn ? (looks.at(-1)?.at ?? scope.frame.asOf) : scope.frame.asOf;
  return {
    from: iso(scope, Math.max(line.from, scope.frame.from)),
    to: iso(scope, Math.min(line.to, scope.frame.asOf)),
    side: line.side ?? 'under',
    stretches: stretches.map((one) => ({
      kind: one.kind,
      witness: one.witness ?? null,
      from: iso(scope, one.from),
      to: iso(scope, one.to),
    })),
    looks: looks.map((look) => ({
      at: iso(scope, look.at),
      value: look.value,
      unit: look.unit,
      good: look.good,
      suspect: look.suspect,
    })),
    seen_min: lengthOf(stretches, 'seen', counted),
    nobody_looked_min: lengthOf(stretches, 'nobody_looked', counted),
    under_at_least_min: line.underShortestMin,
    under_at_most_min: line.underLongestMin,
  };
}

type Inside = Stretch & { kind: LineDoc['stretches'][number]['kind'] };

/** What lies ahead is no part of a day that is over; a stretch over the day's bound is cut there. */
function insideDay(scope: DayScope, line: Line): Inside[] {
  const { from, asOf } = scope.frame;
  return line.stretches
    .filter((one): one is Inside => one.kind !== 'ahead')
    .filter((one) => one.to >= from && one.from <= asOf)
    .map((one) => ({ ...one, from: Math.max(one.from, from), to: Math.min(one.to, asOf) }));
}

const lengthOf = (stretches: readonly Inside[], kind: Inside['kind'], until: number): number =>
  stretches
    .filter((one) => one.kind === kind)
    .reduce((sum, one) => sum + Math.max(0, minutesBetween(one.from, Math.min(one.to, until))), 0);
