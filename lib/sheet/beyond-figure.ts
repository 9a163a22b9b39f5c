import type { JudgedRun, Look } from '#lib/fold/book.ts';
import { sideOf } from '#lib/fold/good.ts';
import { restsOn } from '#lib/fold/rests-on.ts';
import type { Profile } from '#lib/limits/profile.ts';

const held = new Set<JudgedRun['step']>(['hot_hold', 'rest', 'service', 'transport', 'cold_hold']);

/**
 * Whether a reading is printed white on black: on the wrong side of the figure to be held at each look, in the
 * reading's own unit. A cooling or reheat has no figure for a single look: there, a reading on which a broken
 * verdict rests.
 * @returns null where no figure speaks of it
 */
export function beyondFigure(run: JudgedRun, look: Look, limits: Profile | null): boolean | null {
  if (!limits) return null;
  if (!held.has(run.step)) return decidesBroken(run, look) ? true : null;
  const side = sideOf(look, run.step, run.stages, limits);
  return side === 'neither' ? null : side === 'bad';
}

/** A broken cooling or reheat rests on its start too, which is no fault: the last look of a piece is. */
const decidesBroken = (run: JudgedRun, look: Look): boolean =>
  run.byPiece.some(({ stages }) =>
    Object.values(stages).some((stage) => {
      if (stage.verdict !== 'broken') return false;
      const last = restsOn(run, stage).at(-1);
      return last?.piece === look.piece && last.at === look.at;
    }),
  );
