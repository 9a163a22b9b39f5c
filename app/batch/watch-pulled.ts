import type { JudgedRun } from '#lib/fold/book.ts';
import { worstLook } from '#lib/fold/pieces.ts';
import { latestLook } from './latest.ts';

/**
 * Whether the coldest piece of a hold was pulled and nobody has read the others since: then the watch piece is
 * only a guess, and all that are left want a look.
 */
export function watchPulled(run: Pick<JudgedRun, 'step' | 'members' | 'looks' | 'end'>): boolean {
  const left = run.members.filter(({ until }) => until !== null);
  const stay = run.members.filter(({ until }) => until === null);
  if (run.step !== 'hot_hold' || run.end !== null || left.length === 0 || stay.length < 2) return false;
  const pulledAt = Math.max(...left.map(({ until }) => until ?? 0));
  if (run.looks.some((look) => look.at > pulledAt)) return false;
  const then = run.members.filter(
    ({ from, until }) => from < pulledAt && (until === null || until >= pulledAt),
  );
  const lasts = then.flatMap(({ piece }) => latestLook(run, piece, pulledAt) ?? []);
  const coldest = worstLook(lasts, run.step);
  return coldest !== null && left.some(({ piece, until }) => piece === coldest.piece && until === pulledAt);
}
