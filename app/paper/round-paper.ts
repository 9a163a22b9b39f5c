import type { Book } from '#lib/fold/book.ts';
import { planOf } from '#lib/fold/plan-of.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';
import type { Spot, StepName } from '#shared/entries/step-name.ts';

/** One line to write on: a numbered piece, or a blank one. */
export type PaperLine = { batch: string | null; food: string | null; piece: number | null };
export type PaperPlace = { equipment: string; name: string; spots: Spot[]; lines: PaperLine[] };

type Now = Pick<Book, 'kitchen' | 'batches'>;

/** What food does where a round walks past (common practice). */
const usualStep: Partial<Record<EquipmentKind, StepName>> = {
  heated_cabinet: 'hot_hold',
  steam_table: 'hot_hold',
  insulated_box: 'hot_hold',
  rack: 'rest',
  cooler: 'cold_hold',
  ice_bath: 'cooling',
  blast_chiller: 'cooling',
  freezer: 'cold_hold',
};
const everyPlace: Spot[] = ['edge', 'core']; // where the plan names no place
const blankLines = 2; // for what goes in tonight and is not in the book yet

/**
 * The round sheet of tonight: each place of the walk with what is in it now, piece by piece, and room for what
 * comes. Places that only see food pass by are there when something is in them.
 */
export function roundPaper(book: Now, language: 'en' | 'es'): PaperPlace[] {
  const places = [...book.kitchen.equipment.values()].filter(({ active }) => active);
  return places
    .map(({ equipment, name, kind }) => ({
      equipment,
      name,
      kind,
      lines: linesAt(book, equipment, language),
    }))
    .filter(({ kind, lines }) => usualStep[kind] !== undefined || lines.length > 0)
    .map(({ equipment, name, kind, lines }) => ({
      equipment,
      name,
      spots: spotsAt(book, equipment, usualStep[kind] ?? 'hot_hold'),
      lines: [
        ...lines,
        ...Array.from({ length: blankLines }, () => ({ batch: null, food: null, piece: null })),
      ],
    }));
}

/** The places in the food that the plan asks for; the air has a column of its own. */
function spotsAt(book: Now, equipment: string, step: StepName): Spot[] {
  const asked = planOf(book.kitchen, step, equipment)?.spots.filter((spot) => spot !== 'air') ?? [];
  return asked.length > 0 ? asked : everyPlace;
}

const linesAt = (book: Now, equipment: string, language: 'en' | 'es'): PaperLine[] =>
  [...book.batches.values()].flatMap((batch) =>
    batch.pieces
      .filter((piece) => piece.equipment === equipment && piece.standing !== 'gone')
      .map((piece) => ({
        batch: batch.name,
        food: (language === 'es' ? batch.food?.name_es : null) ?? batch.food?.name ?? null,
        piece: piece.number,
      })),
  );
