import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { open, rename, rm } from 'node:fs/promises';
import { createGzip } from 'node:zlib';
import type postgres from 'postgres';
import { schemaOf } from '#db/migrate.ts';
import { programVersion } from '#db/program-folder.ts';
import { formatWords, type Manifest } from './manifest.ts';
import { rowFrom, type TableName, tableNames, tables } from './tables.ts';

export type Progress = (done: number, count: number) => void;

/** What was written. `sha256`: of the lines before the last, as the last one says it. `bytes`: of the file. */
export type Written = { manifest: Manifest; lines: number; sha256: string; bytes: number };

/**
 * Writes the whole book into a file while it is in use: one snapshot, gzip of JSON Lines. First line the manifest,
 * then each row of each table that is truth (tables.ts), last line the digest. On disk before it has its name; only
 * its owner may read it.
 */
export async function writeBackup(
  sql: postgres.Sql,
  file: string,
  now: number,
  progress: Progress,
): Promise<Written> {
  const unfinished = `${file}.unfinished-${process.pid}`;
  const handle = await open(unfinished, 'wx', 0o600);
  try {
    const gzip = createGzip();
    const drained = drain(gzip, handle);
    const write = async (line: string): Promise<void> => {
      if (!gzip.write(line)) await Promise.race([once(gzip, 'drain'), drained]);
    };
    const made = await writeLines(sql, write, now, progress).finally(() => gzip.end());
    await drained;
    await handle.sync();
    const { size: bytes } = await handle.stat();
    await rename(unfinished, file);
    return { ...made, bytes };
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  } finally {
    await handle.close();
  }
}

async function drain(
  source: AsyncIterable<Buffer>,
  handle: { appendFile: (data: Buffer) => Promise<void> },
): Promise<void> {
  for await (const block of source) await handle.appendFile(block);
}

/** The lines of a backup, to whoever takes them. */
export async function writeLines(
  sql: postgres.Sql,
  take: (line: string) => Promise<void>,
  now: number,
  progress: Progress,
): Promise<Omit<Written, 'bytes'>> {
  return sql.begin('isolation level repeatable read read only', async (tx) => {
    const manifest = await manifestOf(tx, now);
    const count = Object.values(manifest.counts).reduce((sum, n) => sum + n, 0);
    const digest = createHash('sha256');
    let waiting = '';
    const put = async (value: object): Promise<void> => {
      const line = `${JSON.stringify(value)}\n`;
      digest.update(line);
      waiting += line;
      if (waiting.length < gathered) return;
      const full = waiting;
      waiting = '';
      await take(full);
    };
    await put(manifest);
    let done = 0;
    for (const table of tableNames) {
      for await (const slice of rowsOf(tx, table)) {
        for (const raw of slice) await put({ table, row: rowFrom(table, raw) });
        done += slice.length;
        progress(done, count);
      }
    }
    const sha256 = digest.digest('hex');
    await take(`${waiting}${JSON.stringify({ end: { lines: count + 1, sha256 } })}\n`);
    return { manifest, lines: count + 2, sha256 };
  });
}

const gathered = 64 * 1024;

/** In the order of the key, text by its bytes: the same rows give the same lines on any server. */
function rowsOf(tx: postgres.TransactionSql, table: TableName): AsyncIterable<Record<string, unknown>[]> {
  const { columns, key } = tables[table];
  const order = key.map((name) => (name === 'hash' ? `"hash" collate "C"` : `"${name}"`)).join(', ');
  const named = Object.keys(columns)
    .map((name) => `"${name}"`)
    .join(', ');
  return tx
    .unsafe<Record<string, unknown>[]>(`select ${named} from "${table}" order by ${order}`)
    .cursor(1000);
}

async function manifestOf(tx: postgres.TransactionSql, now: number): Promise<Manifest> {
  const heads = await tx<{ site: string; seq: string; hash: string }[]>`
    select site, seq, hash from head order by site`;
  const sites = await tx<{ site: string; body: string }[]>`
    select distinct on (site) site, body from ledger where kind = 'site' order by site, seq desc`;
  const counts: Manifest['counts'] = {};
  for (const table of tableNames) {
    const [row] = await tx`select count(*)::int as count from ${tx(table)}`;
    if (Number(row?.count) > 0) counts[table] = Number(row?.count);
  }
  return {
    format: formatWords,
    program: programVersion(),
    schema: await schemaOf(tx),
    written_at: new Date(now).toISOString(),
    sites: sites.map(({ site, body }) => {
      const { name, zone } = JSON.parse(body) as { name: string; zone: string };
      return { site, name, zone };
    }),
    heads: heads.map(({ site, seq, hash }) => ({ site, seq: Number(seq), hash })),
    counts,
  };
}
