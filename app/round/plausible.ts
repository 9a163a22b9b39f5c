import type { Unit } from '#shared/units.ts';

/**
 * A figure that can hardly be is asked about once: never refused, never corrected in silence. Nothing is written
 * until a key is pressed.
 */
export type OddFigure = {
  kind: 'odd_above' | 'jump';
  typed: string; // as it stands on the screen
  suggestion: string | null; // the likely meaning: "145.0" for "1450"
  bound: number; // the figure that it passes (odd_above), or the last figure of this place (jump)
};

export type Expectation = {
  unit: Unit; // of the typed figure; all figures below are in it
  oddAbove: number | null; // the site asks about any figure above it
  jump: number | null; // the judge's implausible jump, as a distance
  last: number | null; // the last figure of the same piece and place
  lastIsNear: boolean; // the food has no reason to have moved far since: a hold, or minutes ago
};

/** The same digits with the point one place further left (1450 → 145.0) or without it (15.2 → 152). */
function otherPoint(typed: string): string | null {
  if (/^-?\d{3,}$/.test(typed)) return `${typed.slice(0, -1)}.${typed.slice(-1)}`;
  if (/^-?\d+\.\d$/.test(typed)) return typed.replace('.', '');
  return null;
}

/** @returns what to ask, or null where the figure can well be. Bounds: above `oddAbove`; further than `jump`. */
export function oddFigure(typed: string, value: number, expected: Expectation): OddFigure | null {
  const { oddAbove, jump, last, lastIsNear } = expected;
  const fits = (n: number): boolean =>
    (oddAbove === null || n <= oddAbove) && (last === null || jump === null || Math.abs(n - last) <= jump);
  const other = otherPoint(typed);
  const suggestion = other !== null && fits(Number(other)) ? other : null;
  if (oddAbove !== null && value > oddAbove) return { kind: 'odd_above', typed, suggestion, bound: oddAbove };
  if (last === null || jump === null || !lastIsNear || Math.abs(value - last) <= jump) return null;
  return { kind: 'jump', typed, suggestion, bound: last };
}
