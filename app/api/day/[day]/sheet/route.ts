import { join } from 'node:path';
import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { door, refusal } from '#app/server/door.ts';
import { requireSession } from '#app/server/session.ts';
import { daySheet, type SheetText, signedSheet } from '#db/day-sheet.ts';
import { erasedDay } from '#db/erase/erased-day.ts';
import { csvOf } from '#lib/sheet/csv.ts';
import type { Paper } from '#lib/sheet/pdf/paper.ts';
import { sheetPdf } from '#lib/sheet/pdf/sheet-document.ts';
import { printedOf } from '#lib/sheet/printed.ts';
import { sheetQuery } from '#shared/requests/sheet.ts';
import { isoOf } from '#shared/time.ts';

const modules = join(process.cwd(), 'node_modules');

/** The sheet of a day as a file: PDF (for reading in the browser), CSV, or the canonical text itself. */
export const GET = door(async (request) => {
  const session = await requireSession(request);
  const url = new URL(request.url);
  const [, , , day] = url.pathname.split('/');
  const parsed = sheetQuery.safeParse({ ...Object.fromEntries(url.searchParams), day });
  if (!parsed.success) throw refusal(404, 'no_such_sheet', 'choose_offered_day');
  const asked = parsed.data;
  const db = await getDb();
  if (await erasedDay(db, session.site, asked.day)) throw refusal(404, 'no_such_sheet', 'choose_offered_day');
  const sheet = await daySheet(db, session.site, asked.day, Date.now());
  const text =
    sheet && asked.revision !== undefined
      ? await signedSheet(db, session.site, sheet.state, asked.revision)
      : sheet?.now;
  if (!sheet || !text) throw refusal(404, 'no_such_sheet', 'choose_offered_day');
  const body = await formOf(text, asked.format, asked.paper ?? sheet.paper, asked.lang);
  const name = `holdproof-${asked.day}-revision-${text.revision}.${asked.format}`;
  return new NextResponse(body, {
    headers: {
      'content-type': types[asked.format],
      'content-disposition': `${asked.format === 'pdf' ? 'inline' : 'attachment'}; filename="${name}"`,
      'cache-control': 'no-store',
    },
  });
});

const types = {
  pdf: 'application/pdf',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json; charset=utf-8',
} as const;

async function formOf(
  sheet: SheetText,
  format: keyof typeof types,
  paper: Paper,
  language: 'en' | 'es',
): Promise<BodyInit> {
  if (format === 'json') return sheet.text;
  if (format === 'csv') return csvOf(sheet.day);
  const pdf = await sheetPdf(sheet.day, printedOf(sheet, isoOf(Date.now())), { paper, language, modules });
  return Buffer.from(pdf);
}
