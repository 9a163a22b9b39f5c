import type { Written } from '#app/client/written.ts';
import type { Body } from '#shared/entries/entry.ts';

type Field = Body<'amendment'>['field'];
/** What an entry says now, and what it was meant to say, field by field, as text. '' = not said. */
export type Meant = Partial<Record<Field, string>>;

/**
 * One amendment for each field that was meant otherwise; nothing for those left alone. The old entry stays as
 * it was written.
 *
 * @param reason why, in the hand's words; the schema refuses a blank one
 */
export function correctionEntries(target: string, now: Meant, meant: Meant, reason: string): Written[] {
  const changed = (Object.keys(meant) as Field[]).filter(
    (field) => (meant[field] ?? '') !== (now[field] ?? ''),
  );
  return changed.map((field) => amendment(target, field, now[field] ?? '', meant[field] ?? '', reason));
}

/** Takes an entry back: it stays readable, struck, and counts no more. */
export const strike = (target: string, reason: string): Written =>
  amendment(target, 'struck', 'false', 'true', reason);

const amendment = (target: string, field: Field, from: string, to: string, reason: string): Written => ({
  kind: 'amendment',
  body: { target, field, from, to, reason: reason.trim() },
});
