import { rename, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { createTranslator } from 'use-intl/core';
import type { Db } from '#db/connect.ts';
import { daySheet, type SheetText, signedSheet } from '#db/day-sheet.ts';
import { erasedDay } from '#db/erase/erased-day.ts';
import { listSites } from '#db/load.ts';
import { csvOf } from '#lib/sheet/csv.ts';
import type { Paper } from '#lib/sheet/pdf/paper.ts';
import { sheetPdf } from '#lib/sheet/pdf/sheet-document.ts';
import { printedOf } from '#lib/sheet/printed.ts';
import { isoOf, localDate } from '#shared/time.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { eraseWords } from './erase/asked.ts';
import { type Io, terminal } from './io.ts';
import { languageOf, withBook } from './with-book.ts';

const modules = new URL('../node_modules', import.meta.url).pathname;

type Asked = {
  day: string;
  format: 'pdf' | 'csv' | 'json';
  out: string;
  paper: Paper | null; // null = the site's own
  language: Language;
  revision: number | null; // null = as the book tells the day now
};

/**
 * `holdproof sheet --day D --format pdf|csv|json --out FILE [--paper letter|a4] [--lang en|es] [--revision N]`: the
 * daily sheet of the operating day that starts on D. A revision prints its stored, signed text and nothing else.
 *
 * @returns 0 written, 1 there is nothing to print or the file could not be written, 3 asked wrongly or no book
 */
export async function runSheet(args: string[], io: Io = terminal): Promise<number> {
  const t = createTranslator({
    locale: languageOf(io.env),
    messages: messages[languageOf(io.env)],
    namespace: 'sheet.command',
  });
  const asked = askedOf(args);
  if (typeof asked === 'string') {
    io.err(t('asked_wrongly', { what: asked }));
    return 3;
  }
  return withBook(io, async (db) => {
    const [first] = await listSites(db);
    const erased = first ? await erasedDay(db, first.site, asked.day) : null;
    if (erased !== null) {
      const { day, digest, at } = erased;
      io.err(eraseWords(languageOf(io.env))('day.no_sheet', { day, digest, on: at.slice(0, 10) }));
      return 1;
    }
    const sheet = await sheetAsked(db, asked);
    if (typeof sheet === 'string') {
      io.err(t(sheet as 'no_kitchen', { revision: asked.revision ?? 0, day: asked.day }));
      return 1;
    }
    try {
      await written(asked.out, await formOf(sheet.text, asked, sheet.paper));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
      io.err(t('not_written', { file: asked.out, detail: String((error as Error).message) }));
      return 1;
    }
    io.err(
      t(sheet.text.signature ? 'written_signed' : 'written_unsigned', {
        file: asked.out,
        day: asked.day,
        revision: sheet.text.revision,
      }),
    );
    return 0;
  });
}

const isOneOf = <T extends string>(all: readonly T[], value: string | undefined): value is T =>
  value !== undefined && (all as readonly string[]).includes(value);

/** What was asked for, or the option that cannot be understood. */
function askedOf(args: string[]): Asked | string {
  let typed: Record<string, string | undefined>;
  try {
    const option = { type: 'string' } as const;
    const options = {
      day: option,
      format: option,
      out: option,
      paper: option,
      lang: option,
      revision: option,
    };
    typed = parseArgs({ args, options, strict: true }).values;
  } catch (error) {
    return String((error as Error).message);
  }
  const { day = '', format = 'pdf', out = '', paper, lang = 'en', revision } = typed;
  if (!localDate.safeParse(day).success) return `--day ${day}`;
  if (!isOneOf(['pdf', 'csv', 'json'], format)) return `--format ${format}`;
  if (out === '') return '--out';
  if (paper !== undefined && !isOneOf(['letter', 'a4'], paper)) return `--paper ${paper}`;
  if (!isOneOf(['en', 'es'], lang)) return `--lang ${lang}`;
  if (revision !== undefined && !/^[1-9]\d{0,5}$/.test(revision)) return `--revision ${revision}`;
  return {
    day,
    format,
    out,
    paper: paper ?? null,
    language: lang,
    revision: revision === undefined ? null : Number(revision),
  };
}

async function sheetAsked(db: Db, asked: Asked): Promise<{ text: SheetText; paper: Paper } | string> {
  const [first] = await listSites(db);
  const sheet = first ? await daySheet(db, first.site, asked.day, Date.now()) : null;
  if (!first || !sheet) return 'no_kitchen';
  const { paper } = sheet;
  if (asked.revision === null) return { text: sheet.now, paper };
  const text = await signedSheet(db, first.site, sheet.state, asked.revision);
  return text ? { text, paper } : 'no_revision';
}

async function formOf(sheet: SheetText, asked: Asked, paper: Paper): Promise<Uint8Array | string> {
  if (asked.format === 'json') return sheet.text;
  if (asked.format === 'csv') return csvOf(sheet.day);
  return sheetPdf(sheet.day, printedOf(sheet, isoOf(Date.now())), {
    paper: asked.paper ?? paper,
    language: asked.language,
    modules,
  });
}

/** An unfinished file never has the name that was asked for. */
async function written(file: string, content: Uint8Array | string): Promise<void> {
  const unfinished = `${resolve(file)}.unfinished-${process.pid}`;
  await writeFile(unfinished, content);
  await rename(unfinished, resolve(file));
}
