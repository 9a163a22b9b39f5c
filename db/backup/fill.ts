import type postgres from 'postgres';
import { derived } from '#db/derived.ts';
import { isErased } from '#db/erased.ts';
import { type Life, livesOf } from '#db/lives.ts';
import type { Draft, Entry } from '#shared/entries/entry.ts';
import type { OpenBackup } from './read.ts';
import { BackupRefused } from './refused.ts';
import { type BackupRow, type TableName, tables } from './tables.ts';
import type { Progress } from './write.ts';

const rowsAtOnce = 1000;

/**
 * Puts a backup into an empty book, inside the caller's transaction: every row as it was, the index columns and the
 * batches' lives made anew. Nobody begins a site meanwhile. Nothing stands until the caller commits, which is after
 * the chains were walked.
 * @throws BackupRefused `not_empty` and what reading throws
 */
export async function fillFrom(
  tx: postgres.TransactionSql,
  backup: OpenBackup,
  progress: Progress,
): Promise<void> {
  await tx`lock table head in share row exclusive mode`;
  const [{ count = 0 } = {}] = await tx<{ count: number }[]>`select count(*)::int as count from head`;
  if (count > 0) throw new BackupRefused('not_empty', { count });
  let table: TableName | null = null;
  let waiting: BackupRow[] = [];
  const put = async (): Promise<void> => {
    if (table !== null && waiting.length > 0) await insert(tx, table, waiting);
    waiting = [];
  };
  for await (const { table: next, row, done } of backup.rows) {
    if (next !== table || waiting.length >= rowsAtOnce) {
      await put();
      progress(done, backup.count);
    }
    table = next;
    waiting.push(row);
  }
  await put();
  for (const head of backup.manifest.heads) {
    await tx`insert into head ${tx(head, 'site', 'seq', 'hash')}`;
    await insertLives(tx, head.site);
  }
}

const indexes = ['at_ms', 'subject', 'target', 'day'] as const;

async function insert(tx: postgres.TransactionSql, table: TableName, rows: BackupRow[]): Promise<void> {
  const columns = Object.keys(tables[table].columns);
  const whole: BackupRow[] = rows.map((row) =>
    Object.fromEntries(columns.map((name) => [name, row[name] ?? null])),
  );
  if (table === 'ledger') {
    const all: BackupRow[] = whole.map((row) => ({ ...row, ...indexed(row) }));
    await tx`insert into ledger ${tx(all, ...columns, ...indexes)}`;
  } else if (table === 'seal') {
    // An empty book that was already started has made a key of its own, under which nobody was let in.
    await tx`insert into seal ${tx(whole, ...columns)} on conflict (site) do update set key = excluded.key`;
  } else await tx`insert into ${tx(table)} ${tx(whole, ...columns)}`;
}

/** A text that was erased is found by nothing but its time. */
function indexed(row: BackupRow) {
  const body = String(row.body);
  const { atMs, subject, target, day } = derived({
    at: String(row.at),
    kind: String(row.kind) as Draft['kind'],
    body: isErased({ body }) ? {} : JSON.parse(body),
  });
  return { at_ms: atMs, subject, target, day };
}

async function insertLives(tx: postgres.TransactionSql, site: string): Promise<void> {
  const rows = await tx<{ id: string; seq: string; kind: string; at: string; body: string }[]>`
    select id, seq, kind, at, body from ledger
    where site = ${site} and kind in ('batch', 'step', 'amendment') and body not like 'sha256:%'`;
  const entries = rows.map(({ seq, body, ...said }) => ({
    ...said,
    seq: Number(seq),
    body: JSON.parse(body),
  }));
  const lives = livesOf(entries as Entry[]);
  for (let n = 0; n < lives.length; n += rowsAtOnce) {
    const slice = lives.slice(n, n + rowsAtOnce).map((life) => lifeRow(site, life));
    await tx`insert into batch_life ${tx(slice, 'site', 'batch', 'from_ms', 'to_ms')}`;
  }
}

const lifeRow = (site: string, { batch, fromMs, toMs }: Life) => ({
  site,
  batch,
  from_ms: fromMs,
  to_ms: toMs,
});
