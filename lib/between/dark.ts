import type { Batch, Book, JudgedRun, Look } from '#lib/fold/book.ts';
import { lineOf } from '#lib/fold/line.ts';
import { type CoreBounds, coreBounds } from './core-bounds.ts';
import { type GrowthBound, growthBound } from './growth.ts';
import { levelsOf } from './levels.ts';
import { allOff, merged, offSpans, type Span } from './off.ts';
import { type Reading, readingOf, readingsOf } from './readings.ts';
import { fastestFall } from './size.ts';

/** One piece in a stretch without power. Instants ms, lengths min. */
export type DarkPiece = {
  piece: number | null;
  /** Without power while this piece was there; `goesOn`: it still is. */
  dark: Span;
  goesOn: boolean;
  limit: number;
  section: string;
  /** The worst figure of the last look before the power went, and of the first look after it was back. */
  before: Reading | null;
  after: Reading | null;
  /** Below the limit from look to look (the food, any place): at least and at most, over `over`. */
  over: Span;
  foodLeast: number;
  foodMost: number;
  /** The same of the core alone, by its size; null: size or core reading is missing. */
  core: CoreBounds | null;
  growth: GrowthBound;
  /** The record covers it: a logger at the coldest place read all the time, and read no figure under the limit. */
  covered: boolean;
};

export type DarkBatch = { batch: Batch; run: JudgedRun; pieces: DarkPiece[]; cleared: boolean };

/** All food held hot that stood without power, the batches that the record cannot clear first. */
export function darkBatches(book: Book): DarkBatch[] {
  const found = [...book.batches.values()].flatMap((batch) =>
    batch.runs.flatMap((run) => {
      const pieces = darkPieces(book, batch, run);
      return pieces.length === 0
        ? []
        : [{ batch, run, pieces, cleared: pieces.every(({ covered }) => covered) }];
    }),
  );
  return found.sort(
    (a, b) => Number(a.cleared) - Number(b.cleared) || mostOf(b) - mostOf(a) || a.run.start - b.run.start,
  );
}

const mostOf = ({ pieces }: DarkBatch): number => Math.max(...pieces.map(({ foodMost }) => foodMost));

function darkPieces(book: Book, batch: Batch, run: JudgedRun): DarkPiece[] {
  const off = offSpans(book, run);
  if (off.length === 0) return [];
  return run.members.flatMap(({ piece, from, until }) => {
    const end = until ?? run.end ?? book.asOf;
    const dark = merged(
      off
        .map((span) => ({ from: Math.max(span.from, from), to: Math.min(span.to, end) }))
        .filter((span) => span.to > span.from),
    );
    const asked = levelsOf(book, run, piece);
    if (asked === null) return [];
    return dark.map((span) => darkPiece({ book, batch, run, piece, end, off }, span, asked));
  });
}

type Where = {
  book: Book;
  batch: Batch;
  run: JudgedRun;
  piece: number | null;
  end: number;
  off: Span[];
};

function darkPiece(
  { book, batch, run, piece, end, off }: Where,
  dark: Span,
  { limit, section }: { limit: number; section: string },
): DarkPiece {
  // A look that names no piece speaks for the group.
  const own = run.looks.filter(
    (look) => (look.piece === piece || look.piece === null) && !look.suspect && look.spot !== 'air',
  );
  const before = worstAt(
    own.filter(({ at }) => at <= dark.from),
    'last',
  );
  const after = worstAt(
    own.filter(({ at }) => at >= dark.to),
    'first',
  );
  const goesOn = dark.to >= book.asOf && end >= book.asOf;
  const over = { from: before?.at ?? run.start, to: after?.at ?? end };
  const noHeat = allOff(off, over.from, over.to);
  const looks = own.filter(({ at }) => at >= over.from && at <= over.to);
  const { least, most } = foodBelow(looks, limit, over, off);
  return {
    piece,
    dark,
    goesOn,
    limit,
    section,
    before,
    after,
    over,
    foodLeast: least,
    foodMost: most,
    core: coreOf(book, run, piece, { limit, off, over }),
    growth: growthBound(batch.food?.class, before, after, noHeat),
    covered: coveredBy(book, run, piece, dark),
  };
}

/** The lowest figure of the look that is nearest to the dark. */
function worstAt(looks: readonly Look[], which: 'first' | 'last'): Reading | null {
  const near = which === 'last' ? looks.at(-1) : looks[0];
  if (near === undefined) return null;
  const apart = 5 * 60_000;
  const same = looks
    .filter(({ at }) => Math.abs(at - near.at) <= apart)
    .map((look) => readingOf(look, 'low'));
  return same.reduce((low, one) => (one.value < low.value ? one : low));
}

/**
 * The food as a whole. At most: all the time from the look before to the look after. At least: food that was read
 * below the limit while there was no heat stayed below it until the heat came back.
 */
function foodBelow(
  looks: readonly Look[],
  limit: number,
  over: Span,
  off: readonly Span[],
): { least: number; most: number } {
  const under = looks.filter((look) => readingOf(look, 'low').value < limit);
  const least = off.reduce((sum, span) => {
    const first = under.find(({ at }) => at >= span.from && at <= span.to);
    return first === undefined ? sum : sum + Math.max(0, Math.min(span.to, over.to) - first.at);
  }, 0);
  return { least: least / 60_000, most: (over.to - over.from) / 60_000 };
}

function coreOf(
  book: Book,
  run: JudgedRun,
  piece: number | null,
  { limit, off, over }: { limit: number; off: Span[]; over: Span },
): CoreBounds | null {
  const kMax = fastestFall(book, run);
  if (kMax === null) return null;
  const all = readingsOf(run, piece, (look) => look.spot === 'core', 'low');
  const first = all.findLastIndex(({ at }) => at <= over.from);
  const last = all.findIndex(({ at }) => at >= over.to);
  const readings = all.slice(Math.max(0, first), last < 0 ? undefined : last + 1);
  if (readings.length === 0) return null;
  return coreBounds({ readings, limit, kMax, off, ...over });
}

/** A logger at the coldest place, all the time, and no figure under the limit. */
function coveredBy(book: Book, run: JudgedRun, piece: number | null, dark: Span): boolean {
  const { stretches } = lineOf(book, run, { piece });
  if (stretches.some(({ kind, from, to }) => kind === 'under' && from < dark.to && to > dark.from))
    return false;
  const logged = merged(
    stretches.flatMap((one) =>
      one.kind === 'seen' && one.witness === 'logger' ? [{ from: one.from, to: one.to }] : [],
    ),
  );
  return logged.some(({ from, to }) => from <= dark.from && to >= dark.to);
}
