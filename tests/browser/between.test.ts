import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { openBrowser, phone, pictureOf, wordsOn } from './browser.ts';
import { type HardEvening, hardEvening } from './hard-evening.ts';

// A server, a database and a browser on a busy machine.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 600_000 });

let evening: HardEvening;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  evening = await hardEvening();
  browser = await openBrowser();
  const context = await phone(browser);
  const { url } = evening.kitchen;
  await context.addCookies(
    evening.cookie.split('; ').map((pair) => {
      const at = pair.indexOf('=');
      return { name: pair.slice(0, at), value: pair.slice(at + 1), url };
    }),
  );
  page = await context.newPage();
  page.setDefaultTimeout(90_000);
  page.on('pageerror', (fault) => faults.push(String(fault)));
});
afterAll(async () => {
  await browser?.close();
  await evening?.kitchen.stop();
});

const time = '\\d\\d:\\d\\d(?:, [^,]{3,9})?';

async function open(path: string, picture: string): Promise<string> {
  await page.goto(`${evening.kitchen.url}${path}`, { waitUntil: 'networkidle' });
  await pictureOf(page, picture);
  return (await wordsOn(page)).replace(/\s+/g, ' ');
}

async function batchOf(name: string): Promise<string> {
  await page.goto(`${evening.kitchen.url}/batch`);
  const href = await page
    .getByRole('link', { name: new RegExp(name) })
    .first()
    .getAttribute('href');
  if (href === null) throw new Error(`no batch ${name}`);
  return href;
}

describe('a cooling that will fail', () => {
  test('is warned of on the first screen and where coolings stand, in its first half hour', async () => {
    const now = await open('/', 'kitchen');
    expect(now).toMatch(new RegExp(`It will probably not be under 70 °F by ${time}\\.`));
    expect(now).toContain('This is the first half hour: act now.');
    const cooling = await open('/cooling', 'cooling');
    expect(cooling).toMatch(new RegExp(`It will probably not be under 70 °F by ${time}\\.`));
    expect(cooling).toMatch(new RegExp(`Shallower pans in an ice bath: start by ${time}`));
  });

  test('says on its page until when what still helps', async () => {
    const words = await open(await batchOf('BN-DEEP'), 'batch-deep');
    expect(words).toMatch(new RegExp(`Reheat: in the oven by ${time}\\. Started by then, not finished`));
    expect(words).toContain('Times are last moments to start, not to finish.');
  });
});

describe('a cooling that just makes it', () => {
  test('has its range and its deadline, and no warning on the first screen', async () => {
    const cooling = await open('/cooling', 'cooling-again');
    expect(cooling).toMatch(new RegExp(`probably under 70 °F between ${time} and ${time}, deadline ${time}`));
    const now = await open('/', 'kitchen-again');
    expect(now.match(/will probably not be under/g)).toHaveLength(2); // the deep pan's two figures
    const words = await open(await batchOf('PP-THIN'), 'batch-thin');
    expect(words).toMatch(/Measured: of \d+ synthetic foods left alone, \d\d in 100/);
  });
});

describe('a night with a power trip', () => {
  test('has at least and at most below the limit for the batch in the dark, of the food and of its core', async () => {
    const words = await open('/kitchen/dark', 'dark');
    expect(words).toContain('The record does not clear these');
    expect(words).toMatch(/Below 135 °F, the food: at least .* at most 2 h 10 min, from look to look\./);
    expect(words).toMatch(/Below 135 °F, the core alone: at least .* at most/);
  });
});

describe('on paper', () => {
  test('a chart has its axes, its limit with section and its table beside it, in black on white', async () => {
    await page.goto(`${evening.kitchen.url}${await batchOf('PP-THIN')}`, { waitUntil: 'networkidle' });
    await page.emulateMedia({ media: 'print' });
    const chart = page.locator('figure').filter({ hasText: 'The chart as a table' });
    const wide = chart.locator(':scope > svg').last();
    expect(await wide.isVisible()).toBe(true);
    const drawn = (await wide.textContent()) ?? '';
    for (const words of ['inside, °F', 'time on the kitchen clock', '70 °F', '3-501.14(A)(1)'])
      expect(drawn).toContain(words);
    expect(await chart.getByRole('cell', { name: '110.6 °F' }).isVisible()).toBe(true);
    const inks = await wide.evaluate((svg) => {
      const all = [...svg.querySelectorAll('path, text, line')].map((one) => getComputedStyle(one));
      return [...new Set(all.flatMap(({ stroke, fill }) => [stroke, fill]))];
    });
    expect(inks.filter((ink) => /^rgb\((\d+), (\d+), (\d+)\)$/.test(ink)).every(isGrey)).toBe(true);
    await page.emulateMedia({ media: null });
  });
});

const isGrey = (ink: string): boolean => {
  const [red, green, blue] = ink.match(/\d+/g) ?? [];
  return red === green && green === blue;
};

test('no page failed by itself', () => expect(faults).toEqual([]));
