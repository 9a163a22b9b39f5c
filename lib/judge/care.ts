import type { StepRecord } from './record.ts';

/** The care of a microwave: all of it seen to, one part missed, or one part not known; null = none asked. */
export type Care = 'taken' | 'missed' | 'unknown' | null;

/**
 * Covered, rotated or stirred, stood covered: 3-401.12 and 3-403.11(B). One part that is false misses it.
 * @param standS seconds of standing that the rule asks; null = the rule asks no care
 */
export function care({ facts }: StepRecord, standS: number | null): Care {
  if (standS === null) return null;
  const { covered, stirred, stood_s: stoodS } = facts;
  const parts = [
    covered ?? null,
    stirred ?? null,
    stoodS === null || stoodS === undefined ? null : stoodS >= standS,
  ];
  if (parts.includes(false)) return 'missed';
  return parts.includes(null) ? 'unknown' : 'taken';
}
