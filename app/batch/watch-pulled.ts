import type { JudgedRun, Look } from '#lib/fold/book.ts';
import { worstLook } from '#lib/fold/pieces.ts';

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
  const lasts = then.flatMap(({ piece }) => lastBefore(run.looks, piece, pulledAt) ?? []);
  const coldest = worstLook(lasts, run.step);
  return coldest !== null && left.some(({ piece, until }) => piece === coldest.piece && until === pulledAt);
}

/** The lower of a piece's figures at its last look: thin end and thick part are read minutes apart. */
function lastBefore(looks: readonly Look[], piece: number | null, at: number): Look | null {
  const own = looks.filter((look) => look.piece === piece && look.at <= at && look.spot !== 'air');
  const last = own.at(-1);
  if (last === undefined) return null;
  return worstLook(
    own.filter((look) => look.at >= last.at - sameLookMs),
    'hot_hold',
  );
}

const sameLookMs = 5 * 60_000; // docs/judge.md section 2: a look takes its readings one after the other
