import type { JudgedRun, Look } from '#lib/fold/book.ts';
import { high, low } from '#lib/judge/compare.ts';
import { conventions } from '#lib/limits/conventions.ts';
import { converted } from '#shared/units.ts';
import { assumed } from './assumed.ts';

export const hour = 3_600_000;

/** A reading as the sums take it: ms, °F, half-width °F. */
export type Reading = { at: number; value: number; u: number };

/** The worse of typed and corrected counts, as for the judge: the lower of food held hot, the higher of food that cools. */
export function readingOf(look: Look, worse: 'low' | 'high'): Reading {
  const value = converted(worse === 'low' ? low(look) : high(look), look.unit, 'degF');
  const own = look.accuracy ?? null;
  const u = own === null ? assumed.reading : look.unit === 'degF' ? own : own * 1.8;
  return { at: look.at, value, u };
}

/** One piece's readings that are not in doubt, of the spots asked for, in order of time. */
export function readingsOf(
  run: Pick<JudgedRun, 'looks'>,
  piece: number | null,
  spots: (look: Look) => boolean,
  worse: 'low' | 'high',
): Reading[] {
  const found = run.looks
    .filter((look) => look.piece === piece && !look.suspect && look.spot !== 'air' && spots(look))
    .map((look) => readingOf(look, worse))
    .sort((a, b) => a.at - b.at);
  return oneAMoment(found, worse);
}

/** Readings of one look (docs/judge.md, section 2: up to five minutes apart) are one: the worse of them. */
function oneAMoment(readings: readonly Reading[], worse: 'low' | 'high'): Reading[] {
  const apart = conventions.look_min * 60_000;
  const kept: Reading[] = [];
  let began = Number.NEGATIVE_INFINITY;
  for (const reading of readings) {
    const last = kept.at(-1);
    if (last === undefined || reading.at - began >= apart) {
      kept.push(reading);
      began = reading.at;
    } else if (worse === 'low' ? reading.value < last.value : reading.value > last.value)
      kept[kept.length - 1] = reading;
  }
  return kept;
}

/** A figure in °F whatever unit the rule prints. */
export const inF = (limit: { value: number; unit: 'degF' | 'degC' }): number =>
  converted(limit.value, limit.unit, 'degF');
