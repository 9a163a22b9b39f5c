import type { Deviation } from '#lib/fold/book.ts';

export type Missing = 'ends' | 'cause' | 'confirmation' | 'action';

/** What has to be written before a deviation can close, in the order in which a kitchen does it. */
export function stillMissing(deviation: Deviation): Missing[] {
  const missing: Missing[] = [];
  if (deviation.actions.length === 0 && deviation.decisions.length === 0) missing.push('action');
  if (deviation.ends.some((piece) => piece.end === null)) missing.push('ends');
  if (!deviation.actions.some((action) => (action.body.cause ?? '') !== '')) missing.push('cause');
  if (deviation.unconfirmed.length > 0) missing.push('confirmation');
  return missing;
}
