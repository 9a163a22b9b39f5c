import type { JudgedRun } from '#lib/fold/book.ts';
import { restsOn } from '#lib/fold/rests-on.ts';
import type { Stage, StageName } from '#lib/judge/answer.ts';
import { figuresOf, leastChecked } from '#lib/judge/explain-figures.ts';
import type { StageDoc } from './day-schema.ts';
import { type DayScope, isoOrNull } from './day-scope.ts';

/** A stage as the sheet carries it: readings by id, instants in kitchen time, nothing that depends on the clock. */
export function stageDocOf(scope: DayScope, run: JudgedRun, name: StageName, stage: Stage): StageDoc {
  const checked = checkedOf(scope, run, name, stage);
  return {
    verdict: stage.verdict,
    open: stage.open,
    section: stage.section,
    limit: stage.limit,
    limit_min: stage.limit_min,
    longest_min: stage.longest_min,
    shortest_min: stage.shortest_min,
    deadline: isoOrNull(scope, stage.deadline),
    reasons: stage.reasons,
    rests_on: [...new Set(restsOn(run, stage).map((look) => look.id))],
    first_bad: isoOrNull(scope, stage.first_bad),
    // Of food held cold: how long above. The document has one pair of lengths on the wrong side.
    below_longest_min: stage.below_longest_min ?? stage.above_longest_min ?? null,
    below_shortest_min: stage.below_shortest_min ?? stage.above_shortest_min ?? null,
    longest_gap_min: stage.longest_gap_min ?? null,
    pieces_read: stage.pieces_read ?? null,
    ...(stage.last_day === undefined ? {} : { last_day: stage.last_day }),
    ...(checked === null ? {} : { checked }),
  };
}

/** A figure that nobody has read says so wherever it is printed, so the document carries it. */
function checkedOf(scope: DayScope, { asked }: JudgedRun, name: StageName, stage: Stage) {
  const { profile } = scope.book.limits;
  const [record] = asked?.records ?? [];
  if (profile === null || asked === undefined || record === undefined) return null;
  return leastChecked(figuresOf(asked.kind, name, record, profile, stage));
}
