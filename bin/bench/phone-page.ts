import { coolingOutlook } from '#lib/between/cooling.ts';
import { levelsOf } from '#lib/between/levels.ts';
import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import { lineOf } from '#lib/fold/line.ts';
import { lineGeometry } from '#lib/sheet/line-geometry.ts';
import type { Entry } from '#shared/entries/entry.ts';

/** One kitchen as a phone has it: its entries, the moment of the page, and the batch that is asked about. */
export type PhoneKitchen = { entries: Entry[]; asOf: number; batch: string };

/** What a sum took at its first call and at each later one, ms, and something of what came of it. */
export type Took = { first: number; later: number[]; found: number };

function runOf({ entries, asOf, batch }: PhoneKitchen): { book: Book; run: JudgedRun } {
  const book = foldBook(entries, { asOf });
  const run = book.batches.get(batch)?.runs.at(-1);
  if (run === undefined) throw new Error('bench: no run to measure');
  return { book, run };
}

function timed(times: number, call: () => number): Took {
  const each: number[] = [];
  let found = 0;
  for (let i = 0; i < times; i += 1) {
    const from = performance.now();
    found = call();
    each.push(performance.now() - from);
  }
  return { first: each[0] ?? Number.NaN, later: each.slice(1), found };
}

/** A new forecast of a cooling that has one more reading: how many of its figures have a range. */
export function forecast(kitchen: PhoneKitchen, times: number): Took {
  const { book, run } = runOf(kitchen);
  return timed(
    times,
    () => coolingOutlook(book, run)?.targets.filter(({ expected }) => expected.say === 'range').length ?? 0,
  );
}

/** The proof line as it is drawn, and its four levels for one piece: how many stretches and looks they have. */
export function proof(kitchen: PhoneKitchen, times: number): Took {
  const { book, run } = runOf(kitchen);
  return timed(times, () => {
    const drawn = lineGeometry(lineOf(book, run), { width: 336, h: 14, y: 0 });
    const levels = levelsOf(book, run, 1)?.levels ?? [];
    const looks = levels.flatMap((one) => (one.level === 'readings' ? one.looks : []));
    return drawn.paths.length + looks.length;
  });
}

Object.assign(globalThis, { holdproofBench: { forecast, proof } });
