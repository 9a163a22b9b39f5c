import type { Deviation } from '#lib/fold/book.ts';

/** Message key under `deviation.advice`. */
export type Advice =
  | 'hold_recent'
  | 'hold_long'
  | 'cooling'
  | 'cooling_total'
  | 'reheat'
  | 'cook'
  | 'cold'
  | 'date_mark'
  | 'probe'
  | 'equipment';

/**
 * A last good look less than this long ago, minutes, is called recent: kitchens' sample procedures let food be
 * reheated only then. Common practice, no section; local codes decide.
 */
export const recentMin = 120;

/**
 * What kitchens do about this finding (common practice). It only advises: it chooses nothing beforehand.
 * Exactly the time is not recent any more.
 */
export function advice(
  deviation: Pick<Deviation, 'step' | 'stage' | 'probe' | 'batch'>,
  sinceLastGoodMin: number | null,
): Advice {
  if (deviation.probe !== null) return 'probe';
  if (deviation.batch === null) return 'equipment';
  if (deviation.stage === 'date_mark') return 'date_mark';
  switch (deviation.step) {
    case 'cook':
      return 'cook';
    case 'reheat':
      return 'reheat';
    case 'cold_hold':
      return 'cold';
    case 'cooling':
      return deviation.stage === 'total' || deviation.stage === 'ambient_total' ? 'cooling_total' : 'cooling';
    default:
      return sinceLastGoodMin !== null && sinceLastGoodMin < recentMin ? 'hold_recent' : 'hold_long';
  }
}
