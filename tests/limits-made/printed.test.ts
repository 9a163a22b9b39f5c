import { expect, test } from 'vitest';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import { sheetPdf } from '#lib/sheet/pdf/sheet-document.ts';
import { textsOf } from '../sheet/pdf-text.ts';
import { twoHands } from './two-hands.ts';

const modules = new URL('../../node_modules', import.meta.url).pathname;
const printed = {
  hash: '3f9a'.repeat(16),
  revision: 1,
  signed: null,
  head: null,
  printedAt: '2026-05-09T18:00:00Z',
  confirming: [],
};

test.each(['en', 'es'] as const)(
  'limits that a kitchen made stand whole on page 1 and lead there from every foot, clear of the page’s number: %s',
  async (language) => {
    const day = canonicalDay(twoHands().entries, '2026-05-08');
    if (!day) throw new Error('no day');
    const pages = await textsOf(await sheetPdf(day, printed, { paper: 'letter', language, modules }));
    const said = pages.map((page) =>
      page
        .map(({ text }) => text)
        .join(' ')
        .replace(/\s+/g, ' '),
    );
    expect(said[0]).toContain('V-12 (County health, Variance 12, 2026-03-01)');
    const foot =
      language === 'en'
        ? 'Ours, FDA Food Code 2022; local changes on page 1.'
        : 'Ours, FDA Food Code 2022; cambios locales en la página 1.';
    for (const page of said) expect(page).toContain(foot);
    for (const page of pages) {
      const number = page.find(({ text, y }) => y < 80 && /^(page|página) \d/.test(text));
      expect(number).toBeDefined();
      const beside = page.filter(({ y, x }) => Math.abs(y - (number?.y ?? 0)) < 9 && x > 492);
      expect(beside.map(({ text }) => text)).toEqual([number?.text]);
    }
  },
);
