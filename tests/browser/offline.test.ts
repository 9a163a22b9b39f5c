import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { KitchenServer } from '#bin/kitchen-server.ts';
import type { EntryOf, Kind } from '#shared/entries/entry.ts';
import {
  eventually,
  isReady,
  letIn,
  openBrowser,
  phone,
  pictureOf,
  pressOn,
  rowsOn,
  wordsOn,
} from './browser.ts';
import { demoKitchen, ofKind as ofKindIn } from './demo-kitchen.ts';
import { openWire, type Wire } from './wire.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 600_000 });

let kitchen: KitchenServer;
let wire: Wire;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

async function newPage(): Promise<Page> {
  const made = await context.newPage();
  made.setDefaultTimeout(90_000);
  made.on('pageerror', (fault) => faults.push(String(fault)));
  return made;
}

beforeAll(async () => {
  kitchen = await demoKitchen();
  wire = await openWire(Number(new URL(kitchen.url).port));
  browser = await openBrowser();
  context = await phone(browser);
  page = await newPage();
});
afterAll(async () => {
  await browser?.close();
  await wire?.close();
  await kitchen?.stop();
});

const words = () => wordsOn(page);
const press = (name: string | RegExp) => pressOn(page, name);
const ofKind = <K extends Kind>(kind: K): Promise<EntryOf<K>[]> => ofKindIn(kitchen, kind);
const picture = (name: string): Promise<void> => pictureOf(page, name);
/** How many entries this phone holds that are not in the book. */
const heldHere = (): Promise<number> => rowsOn(page, 'out');

describe('a phone goes on while nothing answers', () => {
  test('it is made ready by the first visit', async () => {
    await letIn(page, wire.url);
    await eventually(() => isReady(page)).toBe(true);
  });

  test('a page that was opened past the worker is ready too', async () => {
    const opened = () => page.evaluate(() => performance.timeOrigin);
    const before = await opened();
    const tools = await context.newCDPSession(page);
    await tools.send('Page.reload', { ignoreCache: true }); // by force: the browser leaves the worker out
    await eventually(() => opened().catch(() => before)).toBeGreaterThan(before);
    await eventually(() => isReady(page)).toBe(true);
  });

  test('kitchen now opens without network and says how old it is [demand:68]', async () => {
    wire.cut();
    await page.goto(`${wire.url}/`);
    await eventually(words).toContain('No answer from the book');
    expect(await words()).toContain('This is what this phone had at');
    await eventually(words).toContain('BR-C');
    await picture('offline-kitchen');
  });

  test('a figure of the round stays on this phone, is said so, and the judge answers for it offline', async () => {
    const before = (await ofKind('reading')).length;
    await page.goto(`${wire.url}/round`);
    await page.getByRole('button', { name: /^Save/ }).first().waitFor();
    await page.keyboard.type('128.4');
    await press(/^Save/);
    await press(/^red/); // which thermometer: asked once
    await press(/^Save/);
    await eventually(heldHere).toBeGreaterThan(0);
    await eventually(words).toContain('on this phone');
    await picture('offline-round');
    expect((await ofKind('reading')).length).toBe(before);
  });

  test('batch, deviation list and thermometers are drawn from the phone’s own store', async () => {
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch ?? '';
    await page.goto(`${wire.url}/batch/${batch}`);
    await eventually(words).toContain('BR-C');
    expect(await words()).toContain('3-501.16');
    await picture('offline-batch');
    await page.goto(`${wire.url}/deviation`);
    await eventually(words).toContain('Deviations');
    await picture('offline-deviations');
    await page.goto(`${wire.url}/probe`);
    await eventually(words).toContain('Thermometers');
    await page.goto(`${wire.url}/day`);
    await eventually(words).toContain('This page needs the book');
    await picture('offline-needs-the-book');
  });

  test('a piece is sold without network: a form writes too', async () => {
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch ?? '';
    const held = await heldHere();
    await page.goto(`${wire.url}/batch/${batch}/next?to=gone`);
    for (const key of [/^all 5$/, /^5/, /^sold$/, /Write it in the book/]) await press(key);
    await eventually(heldHere).toBeGreaterThan(held);
    await page.waitForURL(/wrote=/);
    await eventually(words).toContain('4 pieces in Cabinet 1');
    await eventually(words).toContain('On this phone, not in the book yet.');
    expect(await words()).not.toContain('In the book');
  });

  test('another one sold by mistake is taken back without network: nothing is deleted, both go to the book', async () => {
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch ?? '';
    const held = await heldHere();
    await page.goto(`${wire.url}/batch/${batch}/next?to=gone`);
    for (const key of [/^all 4$/, /^4/, /^sold$/, /Write it in the book/]) await press(key);
    await page.waitForURL(/wrote=/);
    await eventually(words).toContain('3 pieces in Cabinet 1');
    await press('Undo');
    await page.waitForURL(/undone=/);
    await eventually(words).toContain('4 pieces in Cabinet 1');
    await picture('offline-undone');
    expect(await heldHere()).toBe(held + 2);
  });

  test('a browser that was killed between the tap and the sending sends when it is opened again', async () => {
    const held = await heldHere();
    await page.close();
    const mended = Date.now();
    wire.mend();
    page = await newPage();
    await page.goto(`${wire.url}/`);
    await eventually(heldHere).toBe(0);
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch;
    const readings = (await ofKind('reading')).filter(
      ({ body, received_at: received }) => body.typed === '128.4' && Date.parse(received) >= mended,
    );
    const sold = (await ofKind('step')).filter(
      ({ body }) => body.batch === batch && body.step === 'gone' && body.pieces?.[0] === 5,
    );
    const mistaken = (await ofKind('step')).find(
      ({ body }) => body.batch === batch && body.step === 'gone' && body.pieces?.[0] === 4,
    );
    const struck = (await ofKind('amendment')).filter(({ body }) => body.target === mistaken?.id);
    expect(struck.map(({ body }) => [body.field, body.to])).toEqual([['struck', 'true']]);
    expect(held).toBeGreaterThanOrEqual(4);
    expect(readings).toHaveLength(1);
    expect(sold).toHaveLength(1);
    const late = readings[0];
    expect(Date.parse(late?.received_at ?? '')).toBeGreaterThan(Date.parse(late?.at ?? ''));
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
