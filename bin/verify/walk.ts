import { createHash } from 'node:crypto';
import type postgres from 'postgres';
import { canonicalText, chainStart, entryHash } from '#shared/envelope.ts';
import { columnsOf } from './columns.ts';
import { firstWrongLife } from './lives.ts';

/**
 * The checker shares nothing with the writer but the layout of the bytes (shared/envelope.ts): its own SQL, its own
 * reading of the columns. So it can disagree with the writer.
 */
export type Row = {
  site: string;
  seq: string;
  id: string;
  kind: string;
  version: number;
  at: string;
  entered_at: string;
  received_at: string;
  by: string;
  known: string;
  device: string;
  body: string;
  prev: string;
  hash: string;
  at_ms: string;
  subject: string | null;
  target: string | null;
  day: string | null;
};

export type How =
  | 'seq'
  | 'prev'
  | 'hash'
  | 'body'
  | 'derived'
  | 'head_row'
  | 'no_head'
  | 'text_missing'
  | 'text_differs'
  | 'life';

/** The first entry that does not fit, and how. Words: `database.verify.how.<how>`. */
export type Misfit = { seq: number; how: How; values: Record<string, string | number> };

export type Walked = { count: number; hash: string; misfit: Misfit | null };

const rowsAtOnce = 1000;

type End = { seq: number; hash: string };

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Every site that has entries or a noted end of its chain. */
export async function sitesOf(sql: postgres.Sql): Promise<string[]> {
  const rows = await sql<{ site: string }[]>`
    select site from head union select distinct site from ledger order by site`;
  return rows.map(({ site }) => site);
}

/** Walks one site's chain from its first entry, in one snapshot: entries appended meanwhile are not in it. */
export async function walkSite(
  sql: postgres.Sql,
  site: string,
  progress: (done: number, count: number) => void,
): Promise<Walked> {
  return sql.begin('isolation level repeatable read read only', async (tx) => {
    const [noted] = await tx<
      { seq: string; hash: string }[]
    >`select seq, hash from head where site = ${site}`;
    const [{ count = 0 } = {}] = await tx<{ count: number }[]>`
      select count(*)::int as count from ledger where site = ${site}`;
    const end: End = { seq: 0, hash: chainStart };
    for await (const row of rowsOf(tx, site)) {
      const misfit = misfitOf(row, end) ?? (await signatureMisfit(tx, row));
      if (misfit !== null) return { count, hash: end.hash, misfit };
      end.seq += 1;
      end.hash = row.hash;
      if (end.seq % 20_000 === 0) progress(end.seq, count);
    }
    const misfit = headMisfit(noted, end) ?? (await firstWrongLife(tx, site, end.seq));
    return { count, hash: end.hash, misfit };
  });
}

/** The rows in order, some at a time. From below zero: a row before the first would be one that does not fit. */
async function* rowsOf(tx: postgres.TransactionSql, site: string): AsyncGenerator<Row> {
  let after = String(-(2n ** 63n));
  for (;;) {
    const slice = await tx<Row[]>`
      select * from ledger where site = ${site} and seq > ${after} order by seq limit ${rowsAtOnce}`;
    yield* slice;
    const last = slice.at(-1);
    if (last === undefined) return;
    after = last.seq;
  }
}

function misfitOf(row: Row, end: End): Misfit | null {
  const seq = Number(row.seq);
  const found = (how: How, values: Misfit['values'] = {}): Misfit => ({ seq, how, values });
  if (seq !== end.seq + 1) return found('seq', { expected: end.seq + 1, found: seq });
  if (row.prev !== end.hash) return found('prev');
  if (entryHash({ ...row, seq }, row.body, row.prev, sha256) !== row.hash) return found('hash');
  if (!isCanonical(row.body)) return found('body');
  const wrong = columnsOf(row).find(({ column, says }) => row[column] !== says);
  if (wrong === undefined) return null;
  const { column, says } = wrong;
  return found('derived', { column, found: row[column] ?? '–', expected: says ?? '–' });
}

function isCanonical(body: string): boolean {
  try {
    return canonicalText(JSON.parse(body)) === body;
  } catch {
    return false;
  }
}

async function signatureMisfit(tx: postgres.TransactionSql, row: Row): Promise<Misfit | null> {
  if (row.kind !== 'signature') return null;
  const { hash } = JSON.parse(row.body) as { hash: string };
  const [stored] = await tx<{ text: string }[]>`
    select text from signed_text where site = ${row.site} and hash = ${hash}`;
  const seq = Number(row.seq);
  if (stored === undefined) return { seq, how: 'text_missing', values: {} };
  return sha256(stored.text) === hash ? null : { seq, how: 'text_differs', values: {} };
}

function headMisfit(noted: { seq: string; hash: string } | undefined, end: End): Misfit | null {
  if (noted === undefined) return { seq: end.seq, how: 'no_head', values: {} };
  if (Number(noted.seq) === end.seq && noted.hash === end.hash) return null;
  const values = {
    found: Number(noted.seq),
    found_hash: noted.hash,
    expected: end.seq,
    expected_hash: end.hash,
  };
  return { seq: Math.min(Number(noted.seq), end.seq) + 1, how: 'head_row', values };
}
