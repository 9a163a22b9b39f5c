import { open, rename, rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import type postgres from 'postgres';
import { createTranslator } from 'use-intl/core';
import { messages } from '#shared/words/messages.ts';
import { type Io, terminal } from './io.ts';
import { progress } from './progress.ts';
import { languageOf, withBook } from './with-book.ts';

type Write = (line: object) => Promise<void>;
type Written = { entries: number; texts: number };

/**
 * `holdproof export FILE`: the whole ledger as JSON Lines, in one snapshot. First a manifest; then every entry with
 * what its hash covers (shared/envelope.ts says how), `body` being the text as it is stored; then the signed texts.
 * An unfinished file never has the name that was asked for.
 *
 * @returns 0 written, 1 the file could not be written, 3 no file named or the book was not opened
 */
export async function runExport(args: string[], io: Io = terminal): Promise<number> {
  const locale = languageOf(io.env);
  const t = createTranslator({ locale, messages: messages[locale], namespace: 'database.export' });
  const [file] = args;
  if (file === undefined || args.length > 1) {
    io.err(t('no_file'));
    return 3;
  }
  return withBook(io, async ({ sql }) => {
    const bar = progress(io, (done, count) => t('progress', { done, count }));
    try {
      const written = await writeTo(resolve(file), (write) => writeBook(sql, write, bar.tell)).finally(
        bar.end,
      );
      io.err(t('done', { count: written.entries, texts: written.texts, file }));
      return 0;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
      io.err(t('failed', { file, detail: String((error as Error).message) }));
      return 1;
    }
  });
}

/** Text that is gathered before it is written, in characters. */
const gathered = 256 * 1024;

async function writeTo(file: string, work: (write: Write) => Promise<Written>): Promise<Written> {
  const unfinished = `${file}.unfinished-${process.pid}`;
  const handle = await open(unfinished, 'wx');
  try {
    let text = '';
    const flush = async () => {
      await handle.appendFile(text);
      text = '';
    };
    const written = await work(async (line) => {
      text += `${JSON.stringify(line)}\n`;
      if (text.length >= gathered) await flush();
    });
    await flush();
    await handle.sync();
    await rename(unfinished, file);
    return written;
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  } finally {
    await handle.close();
  }
}

async function writeBook(
  sql: postgres.Sql,
  write: Write,
  progress: (done: number, count: number) => void,
): Promise<Written> {
  return sql.begin('isolation level repeatable read read only', async (tx) => {
    const heads = await tx<{ site: string; seq: string; hash: string }[]>`select * from head order by site`;
    const [{ entries = 0, texts = 0 } = {}] = await tx<Written[]>`
      select (select count(*)::int from ledger) as entries, (select count(*)::int from signed_text) as texts`;
    const [schema] = await tx<{ newest: string }[]>`select max(created_at)::text as newest from migration`;
    await write({
      format: 'holdproof-export/1',
      sites: heads.map(({ site }) => site),
      counts: { entries, signed_texts: texts },
      heads: heads.map(({ site, seq, hash }) => ({ site, seq: Number(seq), hash })),
      schema: Number(schema?.newest ?? 0),
    });
    let done = 0;
    const rows = tx<Record<string, unknown>[]>`
      select site, seq, id, kind, version, at, entered_at, received_at, "by", known, device, body, prev, hash
      from ledger order by site, seq`.cursor(1000);
    for await (const slice of rows) {
      for (const row of slice) await write({ entry: { ...row, seq: Number(row.seq) } });
      done += slice.length;
      progress(done, entries);
    }
    for await (const slice of tx`select site, hash, text from signed_text order by site, hash`.cursor(50)) {
      for (const row of slice) await write({ signed_text: row });
    }
    return { entries, texts };
  });
}
