import type { JudgedRun, Look } from '#lib/fold/book.ts';
import { worstLook } from '#lib/fold/pieces.ts';

const sameLookMs = 5 * 60_000; // docs/judge.md section 2: a look takes its readings one after the other

/** The worse of a piece's figures at its last look (not later than `until`): thin end and thick part are minutes apart. */
export function latestLook(
  run: Pick<JudgedRun, 'looks' | 'step'>,
  piece: number | null,
  until: number,
): Look | null {
  const own = run.looks.filter((look) => look.piece === piece && look.at <= until && look.spot !== 'air');
  const last = own.at(-1);
  if (last === undefined) return null;
  return worstLook(
    own.filter((look) => look.at >= last.at - sameLookMs),
    run.step,
  );
}

/** The lowest (warmest, where cold is asked for) of the last looks at the pieces that are in the run now, or were last. */
export function latestWorst(run: Pick<JudgedRun, 'looks' | 'step' | 'members'>): Look | null {
  const here = run.members.filter(({ until }) => until === null);
  const pieces = new Set((here.length > 0 ? here : run.members).map(({ piece }) => piece));
  // A look that names no piece speaks for the group.
  if (run.looks.some(({ piece }) => piece === null)) pieces.add(null);
  return worstLook(
    [...pieces].flatMap((piece) => latestLook(run, piece, Number.POSITIVE_INFINITY) ?? []),
    run.step,
  );
}
