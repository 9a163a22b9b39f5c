import type { Batch, Book, Look } from '#lib/fold/book.ts';
import type { Side } from '#lib/fold/good.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { msOf } from '#shared/time.ts';
import type { Unit } from '#shared/units.ts';
import { sides } from './view.ts';

export type ReadingRow = {
  id: string;
  at: number;
  enteredAt: number;
  by: string;
  piece: number | null;
  spot: Spot | null;
  air: boolean;
  equipment: string | null;
  typed: string;
  unit: Unit;
  probe: string | null;
  heldS: number | null;
  side: Side | null; // null = of the air, or of no step
  late: boolean;
  suspect: boolean;
  odd: boolean; // above what the house asks about
  struck: boolean;
  was: string[]; // figures that were corrected, first written first
  amendments: { field: string; from: string; reason: string; by: string; at: number }[];
};

/**
 * Every reading of a batch and of the air around it while it was there, newest first, with what was corrected
 * and what was taken back.
 */
export function readingRows(book: Book, batch: Batch): ReadingRow[] {
  const side = sides(book, batch.runs);
  const food = [...book.looks.values()].filter((look) => look.batch === batch.id);
  const rows = [...food, ...airAround(book, batch)].map((look) =>
    rowOf(book, look, side.get(look.id) ?? null),
  );
  return [...rows, ...taken(book, batch)].sort((a, b) => b.at - a.at || (a.id < b.id ? 1 : -1));
}

/** Air readings of the equipment that the batch was in, while it was in it. */
function airAround(book: Book, batch: Batch): Look[] {
  const found = new Map<string, Look>();
  for (const run of batch.runs) {
    run.places.forEach((place, i) => {
      if (place.equipment === null) return;
      const until = run.places[i + 1]?.at ?? run.end ?? book.asOf;
      for (const look of book.air.get(place.equipment) ?? [])
        if (look.at >= place.at && look.at <= until) found.set(look.id, look);
    });
  }
  return [...found.values()];
}

function rowOf(book: Book, look: Look, side: Side | null): ReadingRow {
  const amendments = (book.amendments.get(look.id) ?? []).map(({ body, by, at }) => ({
    field: body.field,
    from: body.from,
    reason: body.reason,
    by,
    at: msOf(at),
  }));
  const oddAbove = book.kitchen.site?.odd_above ?? null;
  return {
    id: look.id,
    at: look.at,
    enteredAt: look.enteredAt,
    by: look.by,
    piece: look.piece,
    spot: look.spot,
    air: look.spot === 'air' || look.batch === null,
    equipment: look.equipment,
    typed: look.typed,
    unit: look.unit,
    probe: look.probe,
    heldS: look.held_s,
    side,
    late: look.late,
    suspect: look.suspect,
    odd: oddAbove !== null && look.unit === book.kitchen.site?.unit && look.value > oddAbove,
    struck: false,
    was: amendments.filter(({ field }) => field === 'value').map(({ from }) => from),
    amendments,
  };
}

/** Readings that were taken back: as they were written. */
function taken(book: Book, batch: Batch): ReadingRow[] {
  return [...book.struck.values()].flatMap((entry): ReadingRow[] => {
    if (entry.kind !== 'reading' || entry.body.batch !== batch.id) return [];
    const { body } = entry;
    return [
      {
        id: entry.id,
        at: msOf(entry.at),
        enteredAt: msOf(entry.entered_at),
        by: entry.by,
        piece: body.piece,
        spot: body.spot,
        air: body.spot === 'air',
        equipment: body.equipment,
        typed: body.typed,
        unit: body.unit,
        probe: body.probe,
        heldS: body.held_s,
        side: null,
        late: false,
        suspect: false,
        odd: false,
        struck: true,
        was: [],
        amendments: (book.amendments.get(entry.id) ?? []).map((amendment) => ({
          field: amendment.body.field,
          from: amendment.body.from,
          reason: amendment.body.reason,
          by: amendment.by,
          at: msOf(amendment.at),
        })),
      },
    ];
  });
}
