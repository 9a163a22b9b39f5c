import type { Stage } from '#lib/judge/answer.ts';
import type { Look, Run } from './book.ts';

/** The looks on which a stage of this run rests, in order of time. */
export function restsOn(run: Pick<Run, 'looks' | 'before'>, stage: Stage): Look[] {
  const all = [...run.looks, ...run.before];
  return stage.rests_on.flatMap((place) => all[place] ?? []).sort((a, b) => a.at - b.at || a.seq - b.seq);
}
