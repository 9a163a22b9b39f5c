import { beforeAll, describe, expect, test } from 'vitest';
import type { Paper } from '#lib/sheet/pdf/paper.ts';
import { sheetPdf } from '#lib/sheet/pdf/sheet-document.ts';
import type { Printed } from '#lib/sheet/printed.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { dayOfDemo, friday, readingsOf, saturdayDay } from './demo-day.ts';
import { linesOf, type Placed, textsOf } from './pdf-text.ts';

const modules = new URL('../../node_modules', import.meta.url).pathname;
const printed: Printed = {
  hash: '3f9a'.repeat(16),
  revision: 2,
  signed: null,
  head: { seq: 816, hash: '7b1c'.repeat(16) },
  printedAt: '2026-10-18T13:10:00-05:00',
  confirming: [],
};
const signed: Printed = {
  ...printed,
  revision: 1,
  signed: {
    name: 'Delia Marchbanks',
    role: 'manager',
    at: '2026-10-17T12:46:00-05:00',
    meaning: 'I have read this day.',
    tookReadings: false,
    items: [{ ref: 'elsewhere', decision: 'nothing more' }],
  },
};

const print = async (day: string, paper: Paper, language: Language, on = printed): Promise<Placed[][]> =>
  textsOf(await sheetPdf(dayOfDemo(day), on, { paper, language, modules }));
const whole = (page: readonly Placed[]): string =>
  page
    .map((one) => one.text)
    .join(' ')
    .replace(/\s+/g, ' ');

describe('the printed sheet', () => {
  let pages: Placed[][] = [];
  beforeAll(async () => {
    pages = await print(friday, 'letter', 'en');
  });

  test('says on every page: page x of y, kitchen, day, bounds, zone, profile, notice, revision, text, chain', () => {
    expect(pages.length).toBeGreaterThan(3);
    for (const [i, page] of pages.entries()) {
      const text = whole(page);
      expect(text).toContain(`page ${i + 1} of ${pages.length}`);
      expect(text).toContain('Lantern Ditch Barbecue, Friday, 16 October 2026');
      expect(text).toContain('16 Oct 04:00 to 17 Oct 04:00, America/Chicago');
      expect(text).toContain('FDA Food Code 2022');
      expect(text).toContain('Local codes decide.');
      expect(text).toContain('Revision 2, unsigned.');
      expect(text).toContain('Printed 18 Oct 13:10.');
      expect(text).toContain('text 3f9a3f9a3f9a');
      expect(text).toContain('book 816 7b1c7b1c7b1c');
    }
  });

  test('names A7, the second pan, B2, the missed round and the blue thermometer on page 1', () => {
    const text = whole(pages[0] ?? []);
    expect(text).toContain('BR-A, Brisket, whole, not injected, piece 7');
    expect(text).toContain('BN-A, Pit beans with brisket trimmings, piece 2');
    expect(text).toContain('BR-B, Brisket, whole, not injected, piece 2');
    expect(text).toContain('Round of 01:00 missed');
    expect(text).toContain('Thermometer blue');
  });

  test('has a line for every reading with its time, hand, figure and thermometer (demand:2 demand:3 demand:5)', () => {
    const day = dayOfDemo(friday);
    const middle = 306; // of a letter page: the newspaper has two columns
    const lines = pages
      .filter((page) => whole(page).includes('Every reading'))
      .flatMap((page) => [...linesOf(page, 0, middle), ...linesOf(page, middle, 612)]);
    const counted = new Map<string, number>();
    for (const line of lines) counted.set(line, (counted.get(line) ?? 0) + 1);
    const hand = new Map(day.people.map((one) => [one.id, one.initials]));
    const thermometer = new Map(day.thermometers.map((one) => [one.id, one.name]));
    const missing = readingsOf(day).filter((reading) => {
      const said = [
        reading.at.slice(11, 16),
        hand.get(reading.by),
        reading.typed,
        thermometer.get(reading.thermometer ?? ''),
      ];
      return !lines.some((line) => {
        const words = line.split(' ');
        return said.every((word) => word !== undefined && words.includes(word));
      });
    });
    expect(missing.map((reading) => reading.id)).toEqual([]);
    expect(lines.filter((line) => /^\d\d:\d\d [A-Z]{2,3} /.test(line)).length).toBe(readingsOf(day).length);
  });

  test('says over each step of readings what its columns are', () => {
    const texts = pages.map(whole).filter((text) => text.includes('Every reading'));
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(text).toContain('time hand pc. place figure therm. note');
  });

  test('leaves no page nearly empty, signed or unsigned, but the last: what follows begins where the page before ends', async () => {
    const foot = 4; // lines of text that stand on every page
    for (const page of [
      ...pages.slice(0, -1),
      ...(await print(friday, 'letter', 'en', signed)).slice(0, -1),
    ]) {
      expect(linesOf(page, 0, 612).length, whole(page)).toBeGreaterThan(foot + 20);
    }
  });

  test('says nothing that releases food', () => {
    const text = pages.map(whole).join(' ');
    expect(text).not.toMatch(/\b(OK|passed|compliant|safe|approved)\b/i);
  });

  test('the signed print names the signer, the meaning and what was decided, on page 1 (demand:41)', async () => {
    const [first = [], second = []] = await print(friday, 'letter', 'en', signed);
    expect(whole(first)).toContain('Delia Marchbanks');
    expect(whole(first)).toContain('“I have read this day.”');
    expect(whole(first)).toContain('Decided by Delia Marchbanks: nothing more');
    expect(whole(second)).toContain('Revision 1, signed by Delia Marchbanks, 17 Oct 12:46.');
  });

  test('stands on A4 and in Spanish too, with every page numbered', async () => {
    const spanish = await print(saturdayDay, 'a4', 'es');
    for (const [i, page] of spanish.entries()) {
      expect(whole(page)).toContain(`página ${i + 1} de ${spanish.length}`);
      expect(whole(page)).toContain('sábado, 17 de octubre de 2026');
    }
    const text = spanish.map(whole).join(' ');
    expect(text).not.toMatch(/\bsheet\.[a-z_.]+\b/); // a message without words would print its key
    expect(text).toContain('era 1450');
  });

  test('prints nothing outside of the paper', async () => {
    for (const page of pages) {
      for (const { x, y, text } of page) {
        expect(x, text).toBeGreaterThanOrEqual(0);
        expect(x, text).toBeLessThan(612);
        expect(y, text).toBeGreaterThan(0);
        expect(y, text).toBeLessThan(792);
      }
    }
  });
});

describe('the words of sheet and day', () => {
  const texts = (value: unknown): string[] =>
    typeof value === 'string' ? [value] : Object.values(value as object).flatMap(texts);

  test.each(['en', 'es'] as const)('%s never say OK, pass, fail, valid, safe or compliant', (language) => {
    const all = [messages[language].sheet, messages[language].day].flatMap(texts);
    expect(all.length).toBeGreaterThan(100);
    const wrong =
      /\b(ok|pass(ed)?|fail(ed)?|valid|safe|compliant|aprobad[oa]s?|segur[oa]s?|válid[oa]s?)\b|[!¡]/i;
    expect(all.filter((words) => wrong.test(words))).toEqual([]);
  });
});

describe('the sheet of a day for which nothing was written', () => {
  test('says so, and not that nothing was broken', async () => {
    const text = (await print('2026-10-01', 'letter', 'en')).map(whole).join(' ');
    expect(text).toContain('Nothing was written for this day');
    expect(text).not.toContain('Nothing broken');
  });
});
