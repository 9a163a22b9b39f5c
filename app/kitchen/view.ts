import type { Site } from '#app/science/said.ts';
import type { Book } from '#lib/fold/book.ts';
import type { KitchenNow } from '#lib/fold/views.ts';
import { wallClock } from '#shared/time.ts';
import type { Unit } from '#shared/units.ts';

/** What the two layouts of kitchen now are drawn from. */
export type KitchenView = {
  book: Book;
  now: KitchenNow;
  site: string;
  zone: string;
  clock: '12' | '24';
  unit: Unit;
  lang: 'en' | 'es';
};

/** The site as what is worked out between two looks is said in. */
export const siteOf = ({ book, zone, clock, unit, lang }: KitchenView): Site => ({
  zone,
  clock,
  unit,
  locale: lang,
  now: book.asOf,
});

/** The time on the kitchen's wall. */
export const timeOf = (view: Pick<KitchenView, 'zone' | 'clock'>, ms: number): string =>
  wallClock(ms, view.zone, view.clock);

/** The food of a batch in the language of this device, where the kitchen gave it a name in it. */
export function foodName(book: Book, batch: string, lang: 'en' | 'es'): string {
  const food = book.batches.get(batch)?.food;
  return (lang === 'es' ? food?.name_es : null) ?? food?.name ?? '';
}

/** "1, 2, 3, 6" as "1–3, 6": numbers of pieces in a row that has little room. */
export function numbers(pieces: readonly number[]): string {
  const sorted = [...new Set(pieces)].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const piece of sorted) {
    const last = runs.at(-1);
    if (last && last[1] === piece - 1) last[1] = piece;
    else runs.push([piece, piece]);
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a}–${b}`)).join(', ');
}
