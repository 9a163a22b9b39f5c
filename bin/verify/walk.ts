import { createHash } from 'node:crypto';
import type postgres from 'postgres';
import { canonicalText, chainStart, entryHash } from '#shared/envelope.ts';
import { columnsOf } from './columns.ts';
import { firstWrongLife } from './lives.ts';

/**
 * The checker shares nothing with the writer but the layout of the bytes (shared/envelope.ts): its own SQL, its own
 * reading of the columns. So it can disagree with the writer.
 */
export type EntryRow = {
  site: string;
  seq: string | number;
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
};

/** With the columns that the database derives from the text for its indexes. */
export type Row = EntryRow & {
  seq: string;
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
  | 'signed_head'
  | 'life';

/**
 * The first entry that does not fit, and how. Words: `database.verify.how.<how>`. `receivedAt`: when it came into
 * the book as it says of itself (a row that was edited may lie); null = there is no such row.
 */
export type Misfit = {
  seq: number;
  how: How;
  values: Record<string, string | number>;
  receivedAt: string | null;
};

/** The end of what fits: number, hash, and when that entry came into the book (null = none fits). */
export type End = { seq: number; hash: string; receivedAt: string | null };

/** `end`: how far the chain fits. */
export type Walked = { count: number; hash: string; misfit: Misfit | null; end: End };

const rowsAtOnce = 1000;

export const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Every site that has entries or a noted end of its chain. */
export async function sitesOf(sql: postgres.Sql): Promise<string[]> {
  const rows = await sql<{ site: string }[]>`
    select site from head union select distinct site from ledger order by site`;
  return rows.map(({ site }) => site);
}

type Progress = (done: number, count: number) => void;

/** Walks one site's chain from its first entry, in one snapshot: entries appended meanwhile are not in it. */
export async function walkSite(sql: postgres.Sql, site: string, progress: Progress): Promise<Walked> {
  return sql.begin('isolation level repeatable read read only', (tx) => walkIn(tx, site, progress));
}

/** `walkSite` inside a transaction that the caller has begun. */
export async function walkIn(tx: postgres.TransactionSql, site: string, progress: Progress): Promise<Walked> {
  const [head] = await tx<{ seq: string; hash: string }[]>`select seq, hash from head where site = ${site}`;
  const [{ count = 0 } = {}] = await tx<{ count: number }[]>`
    select count(*)::int as count from ledger where site = ${site}`;
  const end: End = { seq: 0, hash: chainStart, receivedAt: null };
  for await (const row of rowsOf(tx, site)) {
    const misfit = misfitOf(row, end) ?? derivedMisfit(row) ?? (await signatureMisfit(tx, row));
    if (misfit !== null) return { count, hash: end.hash, misfit, end };
    step(end, row);
    if (end.seq % 2000 === 0) progress(end.seq, count);
  }
  const misfit = headMisfit(head, end) ?? (await firstWrongLife(tx, site, end));
  return { count, hash: end.hash, misfit, end };
}

/** Goes on to the next entry, which fits. */
export function step(end: End, row: EntryRow): void {
  end.seq += 1;
  end.hash = row.hash;
  end.receivedAt = row.received_at;
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

/** Whether an entry fits behind the end of what was walked, by its text alone; null = it does. */
export function misfitOf(row: EntryRow, end: End): Misfit | null {
  const seq = Number(row.seq);
  const found = misfitAt(row);
  if (seq !== end.seq + 1) return found('seq', { expected: end.seq + 1, found: seq });
  if (row.prev !== end.hash) return found('prev');
  if (entryHash({ ...row, seq }, row.body, row.prev, sha256) !== row.hash) return found('hash');
  if (!isCanonical(row.body)) return found('body');
  return row.kind === 'signature' ? signedHeadMisfit(row, end) : null;
}

export const misfitAt =
  (row: EntryRow) =>
  (how: How, values: Misfit['values'] = {}): Misfit => ({
    seq: Number(row.seq),
    how,
    values,
    receivedAt: row.received_at,
  });

/** A signature names the end of the chain under it, which is the entry before it: an older book says so of itself. */
function signedHeadMisfit(row: EntryRow, end: End): Misfit | null {
  const { head } = JSON.parse(row.body) as { head: { seq: number; hash: string } | null };
  if (head === null || head.seq < end.seq) return null;
  if (head.seq === end.seq && head.hash === end.hash) return null;
  return misfitAt(row)('signed_head', { found: head.seq, found_hash: head.hash, expected_hash: end.hash });
}

function derivedMisfit(row: Row): Misfit | null {
  const wrong = columnsOf(row).find(({ column, says }) => row[column] !== says);
  if (wrong === undefined) return null;
  const { column, says } = wrong;
  return misfitAt(row)('derived', { column, found: row[column] ?? '–', expected: says ?? '–' });
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
  if (stored === undefined) return misfitAt(row)('text_missing');
  return sha256(stored.text) === hash ? null : misfitAt(row)('text_differs');
}

/** Whether the noted end of a chain is where the walk ended. */
export function headMisfit(
  noted: { seq: string | number; hash: string } | undefined,
  end: End,
): Misfit | null {
  if (noted === undefined) return { seq: end.seq, how: 'no_head', values: {}, receivedAt: end.receivedAt };
  if (Number(noted.seq) === end.seq && noted.hash === end.hash) return null;
  const values = {
    found: Number(noted.seq),
    found_hash: noted.hash,
    expected: end.seq,
    expected_hash: end.hash,
  };
  return { seq: Math.min(Number(noted.seq), end.seq) + 1, how: 'head_row', values, receivedAt: null };
}
