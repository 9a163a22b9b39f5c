import type { Book } from '#lib/fold/book.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';

/** What stops when the power goes: a smoker's fan and feed too. Common practice. */
const powered: ReadonlySet<EquipmentKind> = new Set([
  'pit',
  'heated_cabinet',
  'cooler',
  'blast_chiller',
  'steam_table',
  'oven',
]);

export type PoweredPlace = { id: string; name: string };

const offNow = (book: Pick<Book, 'off'>, equipment: string): boolean =>
  book.off.get(equipment)?.at(-1)?.until === null;

/** In the order of the walk: what may be written as off, or (`back`) what is off by the book. */
export function poweredPlaces(book: Pick<Book, 'off' | 'kitchen'>, back: boolean): PoweredPlace[] {
  return [...book.kitchen.equipment.values()]
    .filter(({ equipment, kind, active }) =>
      back ? offNow(book, equipment) : active && powered.has(kind) && !offNow(book, equipment),
    )
    .map(({ equipment, name }) => ({ id: equipment, name }));
}
