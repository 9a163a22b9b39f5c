import type { Look } from '#lib/fold/book.ts';
import type { Spot } from '#shared/entries/step-name.ts';

/** What was found at one piece: its first look at each place around or after the finding, and the one before. */
export type FoundLooks = { looks: Look[]; before: Look | null };

const aroundMin = 15; // looks of one round belong together, also those just before the one that showed it
const order: readonly (Spot | null)[] = ['edge', 'coldest', null, 'warmest', 'core', 'surface'];

/**
 * @param looks food readings of the step, in order of time
 * @param foundAt when it was found (ms)
 * @returns at most one look a place, thin end first; `before` is the last one earlier than all of them
 */
export function foundLooks(looks: readonly Look[], piece: number | null, foundAt: number): FoundLooks {
  const own = looks.filter((look) => look.piece === piece && look.spot !== 'air');
  const near = own.filter((look) => look.at >= foundAt - aroundMin * 60_000);
  const first = [...Map.groupBy(near, (look) => look.spot).values()].flatMap(([look]) => look ?? []);
  const earliest = Math.min(...first.map((look) => look.at), foundAt);
  return {
    looks: first.sort((a, b) => order.indexOf(a.spot) - order.indexOf(b.spot)),
    before: own.findLast((look) => look.at < earliest && !first.includes(look)) ?? null,
  };
}
