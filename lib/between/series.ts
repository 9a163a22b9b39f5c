import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { worstLook } from '#lib/fold/pieces.ts';
import { provesCooled } from '#lib/judge/evidence.ts';
import { type Reading, readingsOf } from './readings.ts';

/** One undisturbed cooling of one piece: readings of its inside since it was last moved. */
export type CoolingSeries = { piece: number | null; since: number; readings: Reading[] };

/** The piece that decides: the one whose inside was warmest at its last look. A noted move starts a new series. */
export function coolingSeries(book: Book, run: JudgedRun): CoolingSeries {
  const since = run.places.at(-1)?.at ?? run.start;
  const inside = run.looks.filter(
    (look) => provesCooled(look.spot) && !look.suspect && look.at <= (run.end ?? book.asOf),
  );
  const lastOf = new Map(inside.map((look) => [look.piece, look]));
  const here = run.members.filter(({ until }) => until === null).map(({ piece }) => piece);
  const among = [...lastOf.values()].filter(({ piece }) => here.length === 0 || here.includes(piece));
  const warmest = worstLook(among.length > 0 ? among : [...lastOf.values()], 'cooling');
  const piece = warmest?.piece ?? null;
  const all = warmest === null ? [] : readingsOf(run, piece, ({ spot }) => provesCooled(spot), 'high');
  return { piece, since, readings: all.filter(({ at }) => at >= since) };
}
