import { profileOf, stagesOf } from '#lib/fold/ask.ts';
import type { Book, JudgedRun, Look } from '#lib/fold/book.ts';
import { sideOf } from '#lib/fold/good.ts';
import { byLogger, lineOf } from '#lib/fold/line.ts';
import { type CoreBounds, coreBounds } from './core-bounds.ts';
import { offSpans, type Span } from './off.ts';
import { inF, readingsOf } from './readings.ts';
import { fastestFall } from './size.ts';

/**
 * How much of a hold is witnessed, by what is known. `readings`: each look proves its own moment. `coldest_log`: a
 * record of the coldest place, a reading every few minutes. `thickness`: a core of known size falls no faster than it
 * can. `heater_off`: the same, and where the heat was off nothing warmed it again. The levels are never added up.
 */
export type ProofLevel =
  | { level: 'readings'; looks: number[]; from: number; to: number }
  | { level: 'coldest_log'; has: false }
  | { level: 'coldest_log'; has: true; stretches: Span[]; minutes: number; from: number; to: number }
  | { level: 'thickness' | 'heater_off'; has: false; lacks: 'size' | 'core' | 'off' | 'room' }
  | {
      level: 'thickness' | 'heater_off';
      has: true;
      bounds: CoreBounds;
      kMax: number;
      limit: number;
      from: number;
      to: number;
      off: Span[];
    };

export type Levels = { piece: number | null; limit: number; section: string; levels: ProofLevel[] };

const isCore = ({ spot }: Look): boolean => spot === 'core';

/**
 * The four levels for one piece of food that is held hot. Null: no limit to be above is asked of this run (it cools,
 * is heated, or is held cold).
 */
export function levelsOf(book: Book, run: JudgedRun, piece: number | null): Levels | null {
  const stages = stagesOf(run, piece);
  const held = stages.at_readings;
  if (held === undefined || held.limit === null || !held.limit.comparison.endsWith('above')) return null;
  const limit = inF(held.limit);
  const own = run.members.filter((member) => member.piece === piece);
  const from = Math.min(...own.map((member) => member.from), run.end ?? book.asOf);
  const to = own.some(({ until }) => until === null)
    ? book.asOf
    : Math.max(...own.map(({ until }) => until ?? book.asOf), from);
  return {
    piece,
    limit,
    section: held.section,
    levels: [
      { level: 'readings', looks: goodLooks(book, run, piece), from, to },
      logged(book, run, piece, { from, to }),
      ...coreLevels(book, run, piece, { limit, from, to }),
    ],
  };
}

function goodLooks(book: Book, run: JudgedRun, piece: number | null): number[] {
  const profile = profileOf(book);
  if (profile === null) return [];
  const stages = stagesOf(run, piece);
  return run.looks
    .filter((look) => look.piece === piece && sideOf(look, run.step, stages, profile) === 'good')
    .map(({ at }) => at);
}

/** Only a record of the coldest place over the whole stretch bridges two good readings. */
function logged(book: Book, run: JudgedRun, piece: number | null, { from, to }: Span): ProofLevel {
  if (!run.looks.some((look) => look.piece === piece && byLogger(look)))
    return { level: 'coldest_log', has: false };
  const stretches = lineOf(book, run, { piece }).stretches.flatMap((one) =>
    one.kind === 'seen' && one.witness === 'logger' ? [{ from: one.from, to: one.to }] : [],
  );
  if (stretches.length === 0) return { level: 'coldest_log', has: false };
  const minutes = stretches.reduce((sum, one) => sum + (one.to - one.from) / 60_000, 0);
  return { level: 'coldest_log', has: true, stretches, minutes, from, to };
}

function coreLevels(
  book: Book,
  run: JudgedRun,
  piece: number | null,
  { limit, from, to }: Span & { limit: number },
): ProofLevel[] {
  const kMax = fastestFall(book, run);
  const readings = readingsOf(run, piece, isCore, 'low');
  const off = offSpans(book, run);
  const one = (level: 'thickness' | 'heater_off', spans: Span[]): ProofLevel => {
    if (kMax === null) return { level, has: false, lacks: 'size' };
    if (readings.length === 0) return { level, has: false, lacks: 'core' };
    if (level === 'heater_off' && spans.length === 0) return { level, has: false, lacks: 'off' };
    const bounds = coreBounds({ readings, limit, kMax, off: spans, from, to });
    if (bounds === null) return { level, has: false, lacks: 'room' };
    return { level, has: true, bounds, kMax, limit, from, to, off: spans };
  };
  return [one('thickness', []), one('heater_off', off)];
}
