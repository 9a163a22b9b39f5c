import { createHash } from 'node:crypto';
import { newestSchema } from '#db/migrate.ts';
import { linesOf } from './lines.ts';
import { endSchema, type Manifest, manifestOf } from './manifest.ts';
import { BackupRefused } from './refused.ts';
import { type BackupRow, isRow, type TableName, tables } from './tables.ts';

/** One row of a backup, and how many rows came before it. */
export type Read = { table: TableName; row: BackupRow; done: number };

export type OpenBackup = { manifest: Manifest; count: number; rows: AsyncGenerator<Read> };

/**
 * Opens a backup: its manifest at once, its rows one after another. When the rows have come to their end, all of
 * the file was read and its digest fits. Whether the chains in it fit is the checker's to ask.
 * @throws BackupRefused
 */
export async function openBackup(file: string): Promise<OpenBackup> {
  const lines = linesOf(file);
  const first = await lines.next();
  if (first.done) throw new BackupRefused('not_a_backup');
  const manifest = manifestOf(first.value, newestSchema().number);
  const count = Object.values(manifest.counts).reduce((sum, n) => sum + n, 0);
  return { manifest, count, rows: rowsOf(first.value, lines, manifest, count) };
}

async function* rowsOf(
  first: string,
  lines: AsyncGenerator<string>,
  manifest: Manifest,
  count: number,
): AsyncGenerator<Read> {
  const digest = createHash('sha256').update(`${first}\n`);
  const left: Partial<Record<TableName, number>> = { ...manifest.counts };
  let done = 0;
  let ended = false;
  for await (const line of lines) {
    if (ended) throw new BackupRefused('damaged', { line: done + 3 });
    const said = parsed(line, done + 2);
    const end = endSchema.safeParse(said);
    if (end.success) {
      ended = true;
      if (end.data.end.sha256 !== digest.digest('hex')) throw new BackupRefused('wrong_digest');
      if (done !== count || end.data.end.lines !== count + 1) throw new BackupRefused('cut');
      continue;
    }
    const { table, row } = rowIn(said, done + 2);
    const remaining = (left[table] ?? 0) - 1;
    if (remaining < 0) throw new BackupRefused('damaged', { line: done + 2 });
    left[table] = remaining;
    digest.update(`${line}\n`);
    yield { table, row, done };
    done += 1;
  }
  if (!ended) throw new BackupRefused('cut');
}

function parsed(line: string, at: number): unknown {
  try {
    return JSON.parse(line);
  } catch {
    throw new BackupRefused('damaged', { line: at });
  }
}

function rowIn(said: unknown, at: number): { table: TableName; row: BackupRow } {
  const { table, row } = (said ?? {}) as { table?: string; row?: unknown };
  if (typeof table === 'string' && Object.hasOwn(tables, table) && isRow(table as TableName, row)) {
    return { table: table as TableName, row };
  }
  throw new BackupRefused('damaged', { line: at });
}
