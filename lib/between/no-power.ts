import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { hoursAbove } from './core-bounds.ts';
import { levelsOf } from './levels.ts';
import { hour, type Reading, readingsOf } from './readings.ts';
import { fastestFall } from './size.ts';

/**
 * How long a batch keeps above its limit, at least, in a cabinet without power: of the lowest core at its last look.
 * Its thin end gets cold sooner and nothing bounds how soon. Class S for the core, and no proof of a hold.
 */
export type WithoutPower =
  | {
      has: true;
      piece: number | null;
      last: Reading;
      limit: number;
      kMax: number;
      hours: number;
      until: number;
    }
  | { has: false; lacks: 'size' | 'core' };

/** Null: no limit to be above is asked of the run, or it is over. */
export function withoutPower(book: Book, run: JudgedRun): WithoutPower | null {
  if (run.end !== null) return null;
  const pieces = [...new Set(run.looks.map(({ piece }) => piece))];
  const asked = levelsOf(book, run, pieces[0] ?? run.members[0]?.piece ?? null);
  if (asked === null) return null;
  const kMax = fastestFall(book, run);
  if (kMax === null) return { has: false, lacks: 'size' };
  const each = pieces.flatMap((piece) => {
    const last = readingsOf(run, piece, (look) => look.spot === 'core', 'low').at(-1);
    if (last === undefined) return [];
    const hours = hoursAbove(last, asked.limit, kMax);
    return [{ piece, last, hours, until: last.at + hours * hour }];
  });
  const soonest = each.sort((a, b) => a.until - b.until)[0];
  if (soonest === undefined) return { has: false, lacks: 'core' };
  return { has: true, ...soonest, limit: asked.limit, kMax };
}
