import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { openBook } from '#db/connect.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { openBrowser, phone } from './browser.ts';

// A server, a database and a browser on a busy machine.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let kitchen: KitchenServer;
let browser: Browser;
let pocket: BrowserContext;
let page: Page;
let batch = '';
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

/** Presses the key (or the pick) with these words. */
const press = (words: string | RegExp) =>
  page
    .getByRole('button', { name: words })
    .or(page.getByRole('radio', { name: words }))
    .first()
    .click();

/** What a person can read on the screen now. */
const words = () => page.locator('body').innerText();

async function entries(): Promise<Entry[]> {
  const db = await openBook(kitchen.environment);
  try {
    const [site] = await listSites(db);
    return site ? await loadAll(db, site.site) : [];
  } finally {
    await db.close();
  }
}

/** The readings in the book once there are so many: what a screen calls saved is there before it says so. */
async function readings(count: number): Promise<string[]> {
  const typed = async () =>
    (await entries()).flatMap((entry) => (entry.kind === 'reading' ? [entry.body.typed] : []));
  await expect.poll(typed, { timeout: 30_000 }).toHaveLength(count);
  return typed();
}

describe('a night from an empty book, on a phone', () => {
  test('the first run sets a kitchen up and opens the book', async () => {
    await page.goto(kitchen.url);
    await page.getByLabel('Name of the kitchen').fill('Fox Hollow Smokehouse');
    await page.getByLabel('Name', { exact: true }).fill('Mara Quill');
    await page.getByLabel('Initials').fill('MQ');
    await page.getByLabel('A secret of your own').fill('hickory-night');
    await page.getByLabel('The same again').fill('hickory-nigh');
    await page.getByLabel('What is this device called?').fill('pit phone');
    await press('Open the book');
    // Refused with its field, and nothing typed is lost.
    await expect.poll(() => page.locator('[role=alert], [aria-live]').allInnerTexts()).not.toEqual([]);
    expect(await page.getByLabel('Name of the kitchen').inputValue()).toBe('Fox Hollow Smokehouse');
    await page.getByLabel('The same again').fill('hickory-night');
    await press('Open the book');
    await page.waitForURL((url) => url.pathname === '/');
    expect(await words()).toContain('Nothing is in the kitchen');
  });

  test('a batch of two briskets goes into a cabinet in five taps', async () => {
    await page.goto(`${kitchen.url}/batch/new`);
    for (const words of [/Brisket, whole/, /^2$/, 'Hot hold', 'Cabinet 1', /Write it in the book/])
      await press(words);
    await page.waitForURL(/\/batch\/[0-9a-f-]{36}/);
    batch = new URL(page.url()).pathname.split('/').at(-1) ?? '';
    expect(await words()).toContain('2 pieces in Cabinet 1');
  });

  test('the round takes each figure by digits and one key, and the book has it as typed', async () => {
    await page.goto(`${kitchen.url}/round`, { waitUntil: 'networkidle' }); // keys before it is awake are lost
    await page.keyboard.type('152');
    await press('Save air');
    await press(/^red/); // which thermometer: asked once, then it stays
    await press('Save air');
    await readings(1);
    await page.keyboard.type('141.2');
    await press(/Save thin end/);
    await readings(2);
    await page.keyboard.type('158.0');
    await press(/Save thick part/);
    expect((await readings(3)).at(-1)).toBe('158.0');
  });

  test('below the limit the screen says stop, tag, call, read every piece', async () => {
    await page.keyboard.type('128.4');
    await press(/Save thin end/);
    await readings(4);
    const screen = await words();
    for (const said of ['Stop.', 'Tag piece 2', 'Call Mara Quill', 'read every piece'])
      expect(screen).toContain(said);
  });

  test('an odd figure is asked about, and nothing is written before a key is pressed', async () => {
    await press(/Go on with the round/);
    await page.goto(`${kitchen.url}/round?batch=${batch}&only=1`, { waitUntil: 'networkidle' });
    await page.keyboard.type('1450');
    await press(/^Save/);
    await expect.poll(words).toContain('Did you mean');
    expect(await readings(4)).not.toContain('1450');
    await press(/type it again/);
  });

  test('the deviation is open by itself, and closes when the piece has an end (demand:33)', async () => {
    await page.goto(`${kitchen.url}/deviation`);
    await page.getByRole('link', { name: /128\.4/ }).click();
    await page.waitForURL(/\/deviation\/.+/);
    for (const said of ['3-501.16(A)(1)', 'the food stays blocked', 'local code decide']) {
      expect((await words()).toLowerCase()).toContain(said.toLowerCase());
    }
    await press(/Throw it away/);
    await page.getByLabel(/How much/).fill('8.4 lb');
    await press(/Write it in the book/);
    await expect.poll(words, { timeout: 30_000 }).toMatch(/closed; cause not written yet$/);
    await press(/Why, and what became of it/);
    expect(await words()).toContain('thrown away');
    await page.getByLabel(/What caused it/).fill('latch did not catch');
    await press(/Write the cause/);
    await expect.poll(words, { timeout: 30_000 }).toContain('Cause: latch did not catch');
    await page.goto(`${kitchen.url}/deviation`);
    expect(await words()).toContain('Closed');
    const actions = (await entries()).filter(({ kind }) => kind === 'corrective_action');
    expect(actions.map(({ body }) => 'amount' in body && body.amount)).toContain('8.4 lb');
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
