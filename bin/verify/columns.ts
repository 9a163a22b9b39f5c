import { erasedSha256 } from '#shared/envelope.ts';
import type { Row } from './misfit.ts';

type Column = 'at_ms' | 'subject' | 'target' | 'day';

/**
 * What the columns beside the text must say, read from the text alone. Screens find entries by these columns: one
 * that was moved would be missing from its night though its hash fits.
 */
export function columnsOf({ kind, at, body }: Row): { column: Column; says: string | null }[] {
  // Of a text that was erased nothing is left by which it could be found, but its time.
  const said = (erasedSha256(body) === null ? JSON.parse(body) : {}) as Record<string, unknown>;
  return [
    { column: 'at_ms', says: String(Date.parse(at)) },
    { column: 'subject', says: subject(kind, said) },
    { column: 'target', says: target(said) },
    { column: 'day', says: kind === 'signature' && said.day !== undefined ? String(said.day) : null },
  ];
}

/** The batch; else the batch with which a deviation's key begins; else the probe or equipment of these kinds. */
function subject(kind: string, said: Record<string, unknown>): string | null {
  const batch = id(said.batch) ?? id(parts(said.deviation).length > 1 ? parts(said.deviation)[0] : null);
  if (batch !== null) return batch;
  if (kind === 'probe_check') return id(said.probe);
  if (kind === 'reading' || kind === 'equipment_off' || kind === 'equipment_on') return id(said.equipment);
  return null;
}

/** The entry that is corrected or confirmed; else the entry that opened the deviation by hand. */
function target(said: Record<string, unknown>): string | null {
  const one = parts(said.deviation);
  return id(said.target) ?? id(said.confirms) ?? (one.length === 1 ? id(one[0]) : null);
}

const parts = (deviation: unknown): string[] => (typeof deviation === 'string' ? deviation.split('/') : []);

const id = (value: unknown): string | null =>
  typeof value === 'string' && /^[\da-f]{8}-([\da-f]{4}-){3}[\da-f]{12}$/i.test(value)
    ? value.toLowerCase()
    : null;
