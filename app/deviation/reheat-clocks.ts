import { minutesBetween } from '#shared/time.ts';

/** Two lengths, minutes; null = that moment is not known. Neither decides anything. */
export type ReheatClocks = { fromLastGoodMin: number | null; fromFindingMin: number };

/**
 * The two clocks of a corrective reheat (docs/judge.md 4.3): no published section says from when its two hours
 * run, so both are shown, from the last good look and from the finding.
 *
 * @param endAt when the target was reached, or now while it was not (ms)
 */
export const reheatClocks = (lastGoodAt: number | null, foundAt: number, endAt: number): ReheatClocks => ({
  fromLastGoodMin: lastGoodAt === null ? null : minutesBetween(lastGoodAt, endAt),
  fromFindingMin: minutesBetween(foundAt, endAt),
});
