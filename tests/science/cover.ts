import { ASSUMED, outlook } from '#lib/science/forecast.ts';
import { Chance } from '../truth/chance.ts';
import { foodOf, writtenOf } from './foods.ts';

type Counted = { foods: number; inside: number };

/** How often the true time lay inside the range that the screen would have shown. */
export type Cover = {
  /** Foods with a range that has both ends: the ones that are counted. */
  foods: number;
  inside: number;
  early: number; // the truth came before the range
  late: number; // and after it
  /** Nothing to count: only "not before", "does not fit", "this air may never get it there". */
  open: number;
  unfit: number;
  never: number;
  /** The same by shape, and of the foods with eight readings or more. */
  of: Map<string, Counted>;
};

function count(of: Cover['of'], name: string, inside: boolean): void {
  const counted = of.get(name) ?? { foods: 0, inside: 0 };
  of.set(name, { foods: counted.foods + 1, inside: counted.inside + (inside ? 1 : 0) });
}

const TARGETS = [70, 70, 41] as const;

/** One look at each of so many foods, at a moment by chance before it was cold. */
export function coverOf(foods: number, seed: number): Cover {
  const cover: Cover = { foods: 0, inside: 0, early: 0, late: 0, open: 0, unfit: 0, never: 0, of: new Map() };
  for (let each = 0; cover.foods < foods; each += 1) {
    const chance = new Chance(seed + each);
    const food = foodOf(chance);
    const target = chance.one(TARGETS);
    const truth = food.passes(target);
    // A tenth to nine tenths of the way, or of six hours where it is long.
    const written = writtenOf(food, Math.min(truth ?? 6, 6) * chance.between(0.1, 0.9), chance);
    if (written === null) continue;
    const [said] = outlook(written, { ...ASSUMED, air: written.air }, [target]);
    if (said?.say === 'does_not_fit') cover.unfit += 1;
    else if (said?.say === 'air_may_not_get_there') cover.never += 1;
    else if (said?.say !== 'range' || said.latest === null) cover.open += 1;
    else {
      cover.foods += 1;
      const at = truth ?? Number.POSITIVE_INFINITY;
      if (at < said.earliest) cover.early += 1;
      else if (at > said.latest) cover.late += 1;
      else cover.inside += 1;
      const inside = said.earliest <= at && at <= said.latest;
      count(cover.of, food.shape, inside);
      if (written.t.length >= 8) count(cover.of, 'eight readings or more', inside);
    }
  }
  return cover;
}
