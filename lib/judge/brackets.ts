import { minutesBetween } from '#shared/time.ts';
import type { Reason, Verdict } from './answer.ts';

/**
 * What the record says about when a stretch began and ended. Instants in ms; null = none. `sLo`: last moment at
 * which it was surely not begun; `sHi`: first at which it surely was; `mLo`: last at which it was surely not
 * done; `mHi`: first at which it surely was.
 */
export type Brackets = {
  sLo: number | null;
  sHi: number | null;
  mLo: number | null;
  mHi: number | null;
};

/** The brackets of one piece in one stage, with the readings (indices of the record) that serve as each. For a proof. */
export type Bracketing = {
  piece: number | null;
  brackets: Brackets;
  serving: { [End in keyof Brackets]: number[] };
};

export type Bracketed = {
  verdict: Verdict;
  longest_min: number | null;
  shortest_min: number;
  deadline: number | null;
  reasons: Reason[];
};

/** Whether a length keeps a limit: exactly the limit does, unless the rule asks for less than it. */
const fits = (minutes: number, limitMin: number, strict: boolean): boolean =>
  strict ? minutes < limitMin : minutes <= limitMin;

/**
 * The verdict on a length of time between two looks at each end (docs/judge.md 4.2).
 *
 * Longest = mHi − sLo, the greatest length it can have had; shortest = mLo − sHi, the least, never below 0.
 * Kept when even the longest fits. Broken when the shortest is the limit or more: it had begun before sHi and was
 * not done at mLo, so the true length is longer than their difference, and equal is broken.
 * @param limitMin minutes
 * @param strict the rule asks for less than the limit, so that exactly the limit is not kept
 */
export function bracketed(brackets: Brackets, limitMin: number, strict: boolean): Bracketed {
  const { sLo, sHi, mLo, mHi } = brackets;
  const longest = sLo === null || mHi === null ? null : minutesBetween(sLo, mHi);
  const shortest = mLo === null || sHi === null ? 0 : Math.max(0, minutesBetween(sHi, mLo));
  const deadline = sLo === null ? null : sLo + limitMin * 60_000;
  const lengths = { longest_min: longest, shortest_min: shortest, deadline };
  if (mLo !== null && sHi !== null && minutesBetween(sHi, mLo) >= limitMin)
    return { ...lengths, verdict: 'broken', reasons: [] };
  if (longest !== null && fits(longest, limitMin, strict))
    return { ...lengths, verdict: 'kept', reasons: [] };
  const reasons: Reason[] = [];
  if (sLo === null) reasons.push('start_unknown');
  if (mHi === null) reasons.push('not_reached');
  if (longest !== null) reasons.push('brackets_too_wide');
  return { ...lengths, verdict: 'not_shown', reasons };
}
