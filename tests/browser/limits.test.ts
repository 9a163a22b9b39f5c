import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { KitchenServer } from '#bin/kitchen-server.ts';
import { textsOf } from '../sheet/pdf-text.ts';
import { eventually, letIn, openBrowser, phone, pictureOf, pressOn, wordsOn } from './browser.ts';
import { demoKitchen, ofKind } from './demo-kitchen.ts';

// A server, a database and a browser on a busy machine.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 300_000 });

let kitchen: KitchenServer;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  [kitchen, browser] = await Promise.all([demoKitchen(), openBrowser()]);
  page = await (await phone(browser)).newPage();
  page.setDefaultTimeout(60_000);
  page.on('pageerror', (fault) => faults.push(String(fault)));
  await letIn(page, kitchen.url);
});
afterAll(async () => {
  await browser?.close();
  await kitchen?.stop();
});

/** Opens a page and waits until its forms are awake: what is typed before that is lost. */
const open = async (path: string): Promise<void> => {
  await page.goto(`${kitchen.url}${path}`, { waitUntil: 'networkidle' });
};
const says = (said: string | RegExp) => eventually(() => wordsOn(page)).toMatch(said);
const profileNow = async () => (await ofKind(kitchen, 'site')).at(-1)?.body.profile;
const ownNow = async () => (await ofKind(kitchen, 'limits')).at(-1)?.body;

const fileOf = (day: string, query: string) =>
  page.request.get(`${kitchen.url}/api/day/${day}/sheet?${query}`, { timeout: 120_000 });
const textOf = async (day: string): Promise<string> => (await fileOf(day, 'format=json')).text();

/** The sheet of the operating day that goes on, as its own document and as its printed text. */
async function sheetOf(day: string): Promise<{ json: string; pdf: string }> {
  const json = await textOf(day);
  const pages = await textsOf(
    new Uint8Array(await (await fileOf(day, 'format=pdf&paper=letter&lang=en')).body()),
  );
  const pdf = pages.map((texts) => texts.map(({ text }) => text).join(' ')).join(' ');
  return { json, pdf: pdf.replace(/\s+/g, ' ') };
}

const signedDay = async (): Promise<string> => (await ofKind(kitchen, 'signature')).at(-1)?.body.day ?? '';
/** The newest day of the list: the one that goes on. */
async function dayThatGoesOn(): Promise<string> {
  await open('/day');
  const links = await page
    .locator('a[href^="/day/2"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('href')));
  return (
    links
      .map((href) => href?.split('/').at(-1) ?? '')
      .sort()
      .at(-1) ?? ''
  );
}

const hotHold = '/set-up/limits/hot_hold';
const newFigure = () => page.getByLabel('New figure');
const save = () => pressOn(page, /^Save/);

describe('the limits of a kitchen, on a phone', () => {
  test('a place is found by typing, and its figures are there to be read before it is chosen', async () => {
    await open('/set-up/kitchen');
    await page.getByText('Choose other limits', { exact: true }).click();
    await page.getByLabel('Find by place, name or edition').fill('texas');
    await says('1 found');
    await page.getByRole('radio', { name: /Texas/ }).check();
    await page.getByText('Its figures', { exact: true }).click();
    await says(/135 °F \/ 57 °C/);
    await pictureOf(page, 'limits-found');
    await save();
    await eventually(profileNow).toBe('us_tx');
    await says('In the book.');
  });

  test('a kitchen page that stood open writes over no choice made elsewhere', async () => {
    await open('/set-up/kitchen');
    const other = await page.context().newPage();
    await other.goto(`${kitchen.url}/set-up/kitchen`, { waitUntil: 'networkidle' });
    await other.getByText('Choose other limits', { exact: true }).click();
    await other.getByLabel('Find by place, name or edition').fill('fda food code 2022');
    await other.getByRole('radio', { name: /FDA Food Code 2022/ }).check();
    await pressOn(other, /^Save/);
    await eventually(profileNow).toBe('fda_2022');
    await other.close();
    await page
      .getByLabel('Name of the kitchen')
      .or(page.getByLabel('Name', { exact: true }))
      .first()
      .fill('Quarry Row');
    await save();
    await says(/Delia Marchbanks changed this while the page stood open: it is “FDA Food Code 2022” now/);
    expect(await profileNow()).toBe('fda_2022');
    // What was typed stays, the rest is as it is in the book: saved again it is taken.
    await save();
    await eventually(async () => (await ofKind(kitchen, 'site')).at(-1)?.body.name).toBe('Quarry Row');
    expect(await profileNow()).toBe('fda_2022');
  });

  test('a page of one cabinet that stood open writes over no name given elsewhere', async () => {
    const [cabinet] = (await ofKind(kitchen, 'equipment')).filter(({ body }) => body.set !== null);
    const path = `/set-up/equipment/${cabinet?.body.equipment}`;
    const now = async () =>
      (await ofKind(kitchen, 'equipment')).findLast(({ body }) => body.equipment === cabinet?.body.equipment)
        ?.body;
    await open(path);
    const other = await page.context().newPage();
    await other.goto(`${kitchen.url}${path}`, { waitUntil: 'networkidle' });
    await other.getByLabel('Name on the door').fill('Cabinet by the door');
    await other.getByLabel('Set to').fill('171');
    await pressOn(other, /^Save/);
    await eventually(async () => (await now())?.name).toBe('Cabinet by the door');
    await other.close();
    await page.getByLabel('Note').fill('gasket renewed');
    await save();
    await says(/changed this while the page stood open: it is “Cabinet by the door” now/);
    await eventually(() => page.getByLabel('Name on the door').inputValue()).toBe('Cabinet by the door');
    await pictureOf(page, 'cabinet-changed');
    expect((await now())?.name).toBe('Cabinet by the door');
    await save();
    await eventually(async () => (await now())?.note).toBe('gasket renewed');
    expect(await now()).toMatchObject({ name: 'Cabinet by the door', set: { value: 171 } });
  });

  test('every figure can be seen with its section and edition', async () => {
    await open('/set-up/limits');
    await pressOn(page, 'All figures, to read or print');
    await page.waitForURL(/\/figures\/fda_2022/);
    await says(/3-501\.16\(A\)\(1\)/);
    expect(await wordsOn(page)).toContain('135 °F / 57 °C');
    await pictureOf(page, 'limits-figures');
  });

  test('a stricter figure is set freely', async () => {
    await open(hotHold);
    await newFigure().fill('140');
    await says('Stricter than the published figure.');
    await save();
    await eventually(async () => (await ownNow())?.changes.hot_hold).toMatchObject({
      value: 140,
      authority: null,
    });
    const own = await ownNow();
    expect(own?.extends).toBe('fda_2022');
    await eventually(profileNow).toBe(own?.limits);
  });

  test('a looser one is refused until the authority, the document and its date are there', async () => {
    await open(hotHold);
    await newFigure().fill('130');
    await says('Looser than the published figure: it needs the authority, the document and its date.');
    const count = (await ofKind(kitchen, 'limits')).length;
    await save();
    await says('A looser figure needs it. Write it, or type a stricter figure.');
    await pictureOf(page, 'limits-looser');
    await page.getByLabel('Authority').fill('County health');
    await page.getByLabel('Document', { exact: true }).fill('Variance 12');
    await save();
    await says('A looser figure needs it. Write it, or type a stricter figure.');
    expect(await ofKind(kitchen, 'limits')).toHaveLength(count);
    expect(await newFigure().inputValue()).toBe('130');
    await page.getByLabel('Date of the document').fill('2026-03-01');
    await save();
    await eventually(async () => (await ownNow())?.changes.hot_hold).toMatchObject({
      value: 130,
      authority: 'County health',
      document: 'Variance 12',
      dated: '2026-03-01',
    });
  });

  test('it is printed on the sheet of the day that goes on, with who entered it', async () => {
    const { json, pdf } = await sheetOf(await dayThatGoesOn());
    expect(JSON.parse(json).profile.local_changes).toMatchObject([{ role: 'hot_hold' }]);
    for (const words of ['County health', 'Variance 12', '2026-03-01', 'Delia Marchbanks'])
      expect(pdf).toContain(words);
  });

  test('taken back, the published figure counts again and the sheet says so', async () => {
    await open(hotHold);
    await pressOn(page, /Take this change back/);
    await eventually(profileNow).toBe('fda_2022');
    expect((await ownNow())?.active).toBe(false);
    await open('/set-up/limits');
    await says('Nothing. The published figures count as they stand.');
    const { pdf } = await sheetOf(await dayThatGoesOn());
    expect(pdf).not.toContain('Variance 12');
  });

  test('a signed day is shown under other limits, and nothing that is signed changes', async () => {
    const day = await signedDay();
    const before = { sheet: await textOf(day), entries: (await ofKind(kitchen, 'signature')).length };
    await open(`/day/${day}/what-if`);
    await page.getByLabel('Find by place, name or edition').fill('scotland');
    await page.getByRole('radio', { name: /Scotland/ }).check();
    await pressOn(page, 'Show the day under these limits');
    await page.waitForURL(/limits=/);
    await says(/verdicts? would differ under|Nothing differs/);
    const screen = await wordsOn(page);
    expect(screen).toContain('A trial. Nothing in the book changes');
    // Scotland publishes 63 °C for hot food, and a reheat to 82 °C.
    expect(screen).toMatch(/63 °C/);
    await pictureOf(page, 'limits-what-if');
    expect(await textOf(day)).toBe(before.sheet);
    expect(await ofKind(kitchen, 'signature')).toHaveLength(before.entries);
    expect(await profileNow()).toBe('fda_2022');
  });

  test('no page of them scrolls sideways at 360 px, and none has thrown', async () => {
    const paths = ['/set-up/limits', hotHold, '/set-up/limits/figures/fda_2022', '/set-up/kitchen'];
    for (const path of [...paths, `/day/${await signedDay()}/what-if`, '/set-up/foods/catalogue']) {
      await open(path);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360);
    }
    expect(faults).toEqual([]);
  });

  test('the key of the food catalogue says why it cannot be pressed until something is ticked', async () => {
    await open('/set-up/foods/catalogue');
    const key = page.getByRole('button', { name: /Tick at least one food/ });
    expect(await key.getAttribute('aria-disabled')).toBe('true');
    await page.locator('input[type=checkbox]:not(:disabled)').first().check();
    await says('Add 1 food');
    expect(await page.getByRole('button', { name: /Add 1 food/ }).getAttribute('aria-disabled')).toBeNull();
  });
});
