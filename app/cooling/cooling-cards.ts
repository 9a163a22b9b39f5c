import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import type { RowGroup } from '#lib/fold/views.ts';
import type { Stage, StageName } from '#lib/judge/answer.ts';

/** One group that is cooling now: since when, its deadlines by the rule, its warmest last figure, its next look. */
export type CoolingCard = {
  group: RowGroup;
  place: string | null;
  startedAt: number | null; // by the judge's earliest possible start, from the deadline; null = not known
  stages: { name: StageName; judged: Stage }[];
};

/** What is cooling now, the nearest deadline first; what has none known stands before all. */
export function coolingCards(book: Book): CoolingCard[] {
  const runs = new Map<string, JudgedRun>();
  for (const batch of book.batches.values()) for (const run of batch.runs) runs.set(run.key, run);
  return kitchenNow(book)
    .rows.flatMap((row) => row.groups.map((group) => ({ row, group })))
    .filter(({ group }) => group.step === 'cooling')
    .map(({ row, group }) => {
      const stages = Object.entries(runs.get(group.run)?.stages ?? {}).map(([name, judged]) => ({
        name: name as StageName,
        judged,
      }));
      return { group, place: row.name, startedAt: startOf(stages), stages };
    })
    .sort((a, b) => (a.group.deadline?.at ?? 0) - (b.group.deadline?.at ?? 0));
}

/** The earliest possible start that the judge counts from: a deadline less its own length. */
function startOf(stages: CoolingCard['stages']): number | null {
  const known = stages.find(({ judged }) => judged.deadline !== null && judged.limit_min !== null)?.judged;
  return known?.deadline == null || known.limit_min === null
    ? null
    : known.deadline - known.limit_min * 60_000;
}
