import { kindOf } from '#lib/judge/hold-kind.ts';
import type { RuleKind } from '#lib/judge/record.ts';
import type { Run } from './book.ts';

type Followed = Pick<Run, 'step' | 'key' | 'members'>;

/**
 * The rule by which a run is judged; null = preparation. Food at rest, in service or in a box is held as it was
 * before: what its pieces went through in the runs that came first.
 * @param runs all runs of the batch, in order of start
 */
export function ruleOfRun(run: Followed, runs: readonly Followed[]): RuleKind | null {
  const pieces = new Set(run.members.map(({ piece }) => piece));
  const before = runs.slice(
    0,
    runs.findIndex(({ key }) => key === run.key),
  );
  const shared = before.filter(({ members }) =>
    members.some(({ piece }) => piece === null || pieces.has(null) || pieces.has(piece)),
  );
  return kindOf(
    run.step,
    shared.map(({ step }) => step),
  );
}
