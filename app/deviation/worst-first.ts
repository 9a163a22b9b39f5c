import type { Deviation } from '#lib/fold/book.ts';

const stateRank = { open: 0, decided: 1, closed: 2 } as const;

/**
 * Open ones before decided before closed; among equals the longest out of control first, "nobody knows how long"
 * being the longest of all; then the oldest finding.
 */
export const worstFirst = (deviations: readonly Deviation[]): Deviation[] =>
  [...deviations].sort(
    (a, b) =>
      stateRank[a.state] - stateRank[b.state] ||
      longest(b) - longest(a) ||
      a.foundAt - b.foundAt ||
      a.ref.localeCompare(b.ref),
  );

// Finite, so that two unknown lengths compare as equal (Infinity − Infinity is not a number).
const longest = (deviation: Deviation): number => deviation.outLongestMin ?? Number.MAX_SAFE_INTEGER;
