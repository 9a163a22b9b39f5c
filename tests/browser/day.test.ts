import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { openBook } from '#db/connect.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { openBrowser, phone } from './browser.ts';

// A server, a database and a browser on a busy machine.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let kitchen: KitchenServer;
let browser: Browser;
let pocket: BrowserContext;
let page: Page;
let day = ''; // the Friday of the invented night, moved to the present
const faults: string[] = [];

beforeAll(async () => {
  kitchen = await startKitchen();
  browser = await openBrowser();
  pocket = await phone(browser);
  page = await pocket.newPage();
  page.setDefaultTimeout(30_000);
  page.on('pageerror', (fault) => faults.push(String(fault)));
});
afterAll(async () => {
  await browser?.close();
  await kitchen?.stop();
});

const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();

/** What a person can read on the screen now. */
const words = () => page.locator('body').innerText();
const says = (said: string | RegExp) => expect.poll(words, { timeout: 30_000 }).toMatch(said);

async function entries(): Promise<Entry[]> {
  const db = await openBook(kitchen.environment);
  try {
    const [site] = await listSites(db);
    return site ? await loadAll(db, site.site) : [];
  } finally {
    await db.close();
  }
}

const signatures = async (): Promise<EntryOf<'signature'>[]> =>
  (await entries()).filter((entry) => entry.kind === 'signature');

/** What the page gives when its link of this name is followed. */
async function downloaded(name: string): Promise<{ file: string; bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name }).click(),
  ]);
  return { file: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

const hrefOf = async (name: string): Promise<string> =>
  `${kitchen.url}${await page.getByRole('link', { name }).getAttribute('href')}`;

describe('the sheet of a day, on a phone', () => {
  test('the invented kitchen opens by its key, and its manager signs in', async () => {
    await page.goto(kitchen.url);
    await press('Open the demo kitchen');
    await page.waitForURL(/\/sign-in/);
    await press(/Delia Marchbanks/);
    await page.getByLabel('Secret', { exact: true }).fill('lantern-ditch');
    await press('Write as DM');
    await page.waitForURL((url) => url.pathname === '/');
  });

  test('the list of days says which is signed and by whom', async () => {
    const [signed] = await signatures();
    day = signed?.body.day ?? '';
    await page.goto(`${kitchen.url}/day`);
    const row = page.locator(`a[href="/day/${day}"]`);
    expect(await row.innerText()).toContain('signed by Delia Marchbanks');
    await row.click();
    await page.waitForURL(`${kitchen.url}/day/${day}`);
    await says('7 things to answer for, worst first');
  });

  test('what the signature confirmed is not called unconfirmed', async () => {
    const screen = await words();
    expect(screen).toContain('Decision by phone confirmed in signing (DM');
    expect(screen).not.toContain('not confirmed yet');
    expect(screen).toContain('Decided by Delia Marchbanks: A7 discarded');
  });

  test('a corrected figure makes the day another one, and the page names what changed', async () => {
    const reading = (await entries()).find(
      (entry) => entry.kind === 'reading' && entry.body.typed === '202.6',
    );
    const batch = reading?.kind === 'reading' ? reading.body.batch : '';
    await page.goto(`${kitchen.url}/batch/${batch}/correct/${reading?.id}`);
    await page.getByLabel('Figure').fill('203.6');
    await press('typed it wrong');
    await press('Write the correction');
    await page.waitForURL(`${kitchen.url}/batch/${batch}`);
    await page.goto(`${kitchen.url}/day/${day}`);
    const screen = await words();
    expect(screen).toContain('changed since it was signed by Delia Marchbanks');
    expect(screen).toContain('Changed since revision 1 was signed');
    expect(screen).toMatch(/is now 203\.6 .*it was 202\.6/);
  });

  test('what was decided in words is there after a reload', async () => {
    const boxes = page.locator('textarea[id^="item-"]');
    const count = await boxes.count();
    expect(count).toBeGreaterThan(0);
    for (let i = 0; i < count; i += 1) await boxes.nth(i).fill(`read again, stays as decided, ${i + 1}`);
    await page.reload();
    await expect.poll(() => boxes.first().inputValue()).toBe('read again, stays as decided, 1');
    expect(await boxes.nth(count - 1).inputValue()).toBe(`read again, stays as decided, ${count}`);
  });

  test('a wrong secret signs nothing and says so; the right one signs revision 2 (demand:29)', async () => {
    await press('Sign for the day');
    await page.getByLabel('Secret', { exact: true }).fill('lantern-dutch');
    await press('Confirm as DM');
    await says(/That is not the secret of Delia Marchbanks/);
    expect(await signatures()).toHaveLength(1);
    await page.getByLabel('Secret', { exact: true }).fill('lantern-ditch');
    await press('Confirm as DM');
    await says(/Revision 2, Delia Marchbanks/);
    const [, second] = await signatures();
    expect(second?.body.revision).toBe(2);
    expect(second?.body.open_items[0]?.decision).toBe('read again, stays as decided, 1');
  });

  test('revision 1 still says what it said when it was signed', async () => {
    await page.getByRole('link', { name: /^Revision 1/ }).click();
    await says('This is the text of revision 1 as it was signed');
    await page.goto(`${kitchen.url}/day/${day}`);
  });

  test('the files are what they are called, and the text is the one that was signed (demand:47)', async () => {
    const json = await downloaded('Signed text (JSON)');
    expect(json.file).toBe(`holdproof-${day}-revision-2.json`);
    const hash = createHash('sha256').update(json.bytes).digest('hex');
    expect((await signatures()).at(-1)?.body.hash).toBe(hash);

    const csv = await downloaded('Table (CSV)');
    expect(csv.file).toBe(`holdproof-${day}-revision-2.csv`);
    expect(csv.bytes.toString('utf8')).toContain('203.6');

    const pdf = await page.request.get(await hrefOf('PDF, US Letter'));
    expect(pdf.headers()['content-type']).toBe('application/pdf');
    expect((await pdf.body()).subarray(0, 5).toString('latin1')).toBe('%PDF-');
    const table = await page.request.get(await hrefOf('Table (CSV)'));
    expect(table.headers()['content-type']).toBe('text/csv; charset=utf-8');
  });

  test('no page scrolls sideways at 360 px, and none has thrown', async () => {
    for (const path of ['/day', `/day/${day}`]) {
      await page.goto(`${kitchen.url}${path}`);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360);
    }
    expect(faults).toEqual([]);
  });
});
