import { once } from 'node:events';
import postgres from 'postgres';
import { derived } from '#db/derived.ts';
import { sha256 } from '#db/sha256.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { canonicalText, chainStart, entryHash } from '#shared/envelope.ts';
import { isoOf } from '#shared/time.ts';

/** A row of the bare table, column for column as the ledger's. */
type Row = Record<string, string | number | null>;

export type BareScript = {
  /** Locks the head, hashes, inserts, moves the head, commits: one transaction for all that is given. */
  append: (drafts: readonly Draft[]) => Promise<void>;
  /** The same rows without head and hash, for orientation. */
  insert: (drafts: readonly Draft[]) => Promise<void>;
  copy: (drafts: readonly Draft[]) => Promise<void>;
  /**
   * Counts what is in both tables, as the server does by itself within a minute: until then it plans as for a few
   * rows, and may go through all of a site to find one entry.
   */
  settle: () => Promise<void>;
  close: () => Promise<void>;
};

const site = '00000000-0000-7000-8000-000000000001';
const device = '00000000-0000-7000-8000-000000000002';

function rowOf(draft: Draft, seq: number, prev: string): Row & { hash: string } {
  const { id, kind, version, at, entered_at, by } = draft;
  const body = canonicalText(draft.body);
  const received_at = isoOf(Date.now());
  const known = 'tap';
  const said = { site, seq, id, kind, version, at, entered_at, received_at, by, known, device };
  const { atMs: at_ms, subject, target, day } = derived(draft);
  const hash = entryHash(said, body, prev, sha256);
  return { ...said, body, prev, hash, at_ms, subject, target, day };
}

const columns =
  'site seq id kind version at entered_at received_at by known device body prev hash at_ms subject target day'.split(
    ' ',
  );
const textOf = (value: string | number | null | undefined): string =>
  value === null || value === undefined ? '\\N' : String(value).replaceAll('\\', '\\\\');

/**
 * The least that can do what the ledger does, driven straight: a table with the ledger's columns and indexes beside
 * it in the same database, and its own head. The same server, so the same fsync.
 * @param clients connections, as many as append at once
 */
export async function bareScript(
  options: postgres.Options<Record<string, never>>,
  clients = 1,
): Promise<BareScript> {
  const sql = postgres({ ...options, max: clients });
  await sql`create table bench_ledger (like ledger including all)`;
  await sql`create table bench_head (like head including all)`;
  await sql`insert into bench_head ${sql({ site, seq: 0, hash: chainStart })}`;
  let loose = 1_000_000_000; // of rows without a chain
  return {
    append: async (drafts) => {
      await sql.begin(async (tx) => {
        const [head] = await tx<{ seq: number; hash: string }[]>`
          select seq::float8 as seq, hash from bench_head where site = ${site} for update`;
        let { seq, hash } = head ?? { seq: 0, hash: chainStart };
        const rows = drafts.map((draft) => {
          const row = rowOf(draft, ++seq, hash);
          hash = row.hash;
          return row;
        });
        await Promise.all([
          tx`insert into bench_ledger ${tx(rows)}`,
          tx`update bench_head set seq = ${seq}, hash = ${hash} where site = ${site}`,
        ]);
      });
    },
    insert: async (drafts) => {
      await sql`insert into bench_ledger ${sql(drafts.map((draft) => rowOf(draft, ++loose, chainStart)))}`;
    },
    copy: async (drafts) => {
      const names = columns.map((name) => `"${name}"`).join(', ');
      const into = await sql.unsafe(`copy bench_ledger (${names}) from stdin`).writable();
      const rows = drafts.map((draft): Row => rowOf(draft, ++loose, chainStart));
      into.end(`${rows.map((row) => columns.map((name) => textOf(row[name])).join('\t')).join('\n')}\n`);
      await once(into, 'finish');
    },
    settle: async () => {
      await sql`analyze ledger, head, bench_ledger, bench_head`;
    },
    close: () => sql.end(),
  };
}
