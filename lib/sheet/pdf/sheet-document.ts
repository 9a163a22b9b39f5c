import { Document, renderToBuffer } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import type { Language } from '#shared/words/messages.ts';
import type { CanonicalDay } from '../day-schema.ts';
import type { Printed } from '../printed.ts';
import { SheetNames } from '../sheet-names.ts';
import { sheetWords } from '../sheet-words.ts';
import { appendixPages } from './appendix-pages.ts';
import { batchVerdicts } from './batch-verdicts.ts';
import { dayPages } from './day-pages.ts';
import { dayTables } from './day-tables.ts';
import { registerFonts } from './fonts.ts';
import type { Paper } from './paper.ts';
import { readingsPages } from './readings-pages.ts';

export type SheetOptions = {
  paper: Paper;
  language: Language;
  /** Folder of installed packages (…/node_modules) in which the two font packages lie. */
  modules: string;
};

/**
 * The printed sheet of one day as a PDF: page 1 can be read alone, then each batch in the order of the night, what
 * stands behind it, every reading, and in the appendix how each verdict was reached. Printed from the canonical day and from nothing else.
 */
export async function sheetPdf(
  day: CanonicalDay,
  printed: Printed,
  options: SheetOptions,
): Promise<Uint8Array> {
  registerFonts(options.modules);
  const names = new SheetNames(day, sheetWords(options.language), options.language);
  return new Uint8Array(await renderToBuffer(sheetDocument(names, printed, options.paper)));
}

function sheetDocument(names: SheetNames, printed: Printed, paper: Paper): ReactElement<object> {
  const { day, say } = names;
  return h(
    Document,
    {
      title: `${day.site.name}, ${day.day}`,
      author: day.site.name,
      subject: say('sheet.title'),
      producer: 'Holdproof',
      creator: 'Holdproof',
      language: names.language,
      creationDate: new Date(printed.printedAt),
    },
    dayPages(names, printed, paper, [...batchVerdicts(names), ...dayTables(names)]),
    ...readingsPages(names, printed, paper),
    appendixPages(names, printed, paper),
  );
}
