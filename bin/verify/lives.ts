import type postgres from 'postgres';
import { type Life, livesOf } from '#db/lives.ts';
import type { Entry } from '#shared/entries/entry.ts';
import type { Misfit } from './misfit.ts';
import type { End } from './walk.ts';

/**
 * The one table that is derived and kept: from when to when each batch lived. A batch that it ended too early
 * would be missing from the kitchen's screens. Made again from the entries, it must be the same.
 */
export async function firstWrongLife(
  tx: postgres.TransactionSql,
  site: string,
  end: End,
): Promise<Misfit | null> {
  const rows = await tx<{ id: string; seq: string; kind: string; at: string; body: string }[]>`
    select id, seq, kind, at, body from ledger
    where site = ${site} and kind in ('batch', 'step', 'amendment') and body not like 'sha256:%'`;
  const entries = rows.map(({ seq, body, ...said }) => ({
    ...said,
    seq: Number(seq),
    body: JSON.parse(body),
  }));
  const kept = await tx<{ batch: string; from_ms: string; to_ms: string | null }[]>`
    select batch, from_ms, to_ms from batch_life where site = ${site}`;
  const found = new Map(kept.map(({ batch, from_ms, to_ms }) => [batch, span(Number(from_ms), to_ms)]));
  const expected = new Map(livesOf(entries as Entry[]).map(lifeSpan));
  for (const batch of [...expected.keys(), ...found.keys()]) {
    const values = { batch, found: found.get(batch) ?? '–', expected: expected.get(batch) ?? '–' };
    if (values.found !== values.expected) return { seq: end.seq, how: 'life', values, receivedAt: null };
  }
  return null;
}

const span = (fromMs: number, toMs: string | number | null): string =>
  `${new Date(fromMs).toISOString()} / ${toMs === null ? '…' : new Date(Number(toMs)).toISOString()}`;

const lifeSpan = ({ batch, fromMs, toMs }: Life): [string, string] => [batch, span(fromMs, toMs)];
