import type { Book, JudgedRun } from '#lib/fold/book.ts';

export type Span = { from: number; to: number };

/** When the run stood in equipment that was without power, by the book: merged, in order, cut to the run. */
export function offSpans(book: Pick<Book, 'off' | 'asOf'>, run: JudgedRun): Span[] {
  const end = run.end ?? book.asOf;
  const spans = run.places.flatMap(({ equipment, at }, place) => {
    const until = Math.min(run.places[place + 1]?.at ?? end, end);
    const cuts = equipment === null ? [] : (book.off.get(equipment) ?? []);
    return cuts.map((cut) => ({
      from: Math.max(cut.at, at, run.start),
      to: Math.min(cut.until ?? book.asOf, until),
    }));
  });
  return merged(spans.filter(({ from, to }) => to > from));
}

export function merged(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last !== undefined && span.from <= last.to) last.to = Math.max(last.to, span.to);
    else joined.push({ ...span });
  }
  return joined;
}

/** Whether the heat was off for all of a stretch: only then nothing can have warmed the food again. */
export const allOff = (off: readonly Span[], from: number, to: number): boolean =>
  off.some((span) => span.from <= from && span.to >= to);
