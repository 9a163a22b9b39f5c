import type { Book } from '#lib/fold/book.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';

/** One line to write on: a numbered piece, or a blank one. */
export type PaperLine = { batch: string | null; food: string | null; piece: number | null };
export type PaperPlace = { equipment: string; name: string; lines: PaperLine[] };

/** Where food is held or cooled and a round walks past (common practice). */
const walked: ReadonlySet<EquipmentKind> = new Set([
  'heated_cabinet',
  'cooler',
  'ice_bath',
  'blast_chiller',
  'steam_table',
  'insulated_box',
  'rack',
]);
const blankLines = 2; // for what goes in tonight and is not in the book yet

/**
 * The round sheet of tonight: each place of the walk with what is in it now, piece by piece, and room for what
 * comes. Places that only see food pass by are there when something is in them.
 */
export function roundPaper(book: Book, language: 'en' | 'es'): PaperPlace[] {
  const places = [...book.kitchen.equipment.values()].filter(({ active }) => active);
  return places
    .map(({ equipment, name, kind }) => ({
      equipment,
      name,
      kind,
      lines: linesAt(book, equipment, language),
    }))
    .filter(({ kind, lines }) => walked.has(kind) || lines.length > 0)
    .map(({ equipment, name, lines }) => ({
      equipment,
      name,
      lines: [
        ...lines,
        ...Array.from({ length: blankLines }, () => ({ batch: null, food: null, piece: null })),
      ],
    }));
}

const linesAt = (book: Book, equipment: string, language: 'en' | 'es'): PaperLine[] =>
  [...book.batches.values()].flatMap((batch) =>
    batch.pieces
      .filter((piece) => piece.equipment === equipment && piece.standing !== 'gone')
      .map((piece) => ({
        batch: batch.name,
        food: (language === 'es' ? batch.food?.name_es : null) ?? batch.food?.name ?? null,
        piece: piece.number,
      })),
  );
