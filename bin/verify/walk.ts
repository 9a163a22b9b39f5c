import { createHash } from 'node:crypto';
import type postgres from 'postgres';
import { canonicalText, chainStart, entryHash, erasedSha256 } from '#shared/envelope.ts';
import { columnsOf } from './columns.ts';
import { Erasures, type Told } from './erasures.ts';
import { firstWrongLife } from './lives.ts';
import { type EntryRow, type Misfit, misfitAt, type Row } from './misfit.ts';

export type { EntryRow, Misfit, Row } from './misfit.ts';

/** The end of what fits: number, hash, and when that entry came into the book (null = none fits). */
export type End = { seq: number; hash: string; receivedAt: string | null };

/** `end`: how far the chain fits. `erased`: what was erased at the end of its retention, as far as the walk came. */
export type Walked = { count: number; hash: string; misfit: Misfit | null; end: End; erased: Told[] };

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
  const erasures = new Erasures(
    await tx<EntryRow[]>`
    select * from ledger where site = ${site} and kind = 'erasure' order by seq`,
  );
  const erased = erasures.told;
  for await (const row of rowsOf(tx, site)) {
    const misfit =
      misfitOf(row, end) ??
      derivedMisfit(row) ??
      erasures.misfitOf(row) ??
      (await signatureMisfit(tx, row)) ??
      (await erasedTextMisfit(tx, row, erased.at(-1)));
    if (misfit !== null) return { count, hash: end.hash, misfit, end, erased };
    step(end, row);
    if (end.seq % 2000 === 0) progress(end.seq, count);
  }
  const misfit = headMisfit(head, end) ?? (await firstWrongLife(tx, site, end));
  return { count, hash: end.hash, misfit, end, erased };
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
  if (erasedSha256(row.body) !== null) return null;
  if (!isCanonical(row.body)) return found('body');
  return row.kind === 'signature' ? signedHeadMisfit(row, end) : null;
}

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
  if (row.kind !== 'signature' || erasedSha256(row.body) !== null) return null;
  const { hash } = JSON.parse(row.body) as { hash: string };
  const [stored] = await tx<{ text: string }[]>`
    select text from signed_text where site = ${row.site} and hash = ${hash}`;
  if (stored === undefined) return misfitAt(row)('text_missing');
  return sha256(stored.text) === hash ? null : misfitAt(row)('text_differs');
}

/** A signed text that an erasure calls gone, and that is stored all the same. */
async function erasedTextMisfit(
  tx: postgres.TransactionSql,
  row: Row,
  told: Told | undefined,
): Promise<Misfit | null> {
  if (told?.seq !== Number(row.seq)) return null;
  const [kept] = await tx<{ hash: string }[]>`
    select hash from signed_text where site = ${row.site} and hash = any(${told.sheets})`;
  return kept === undefined ? null : misfitAt(row)('text_still_there', { hash: kept.hash });
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
