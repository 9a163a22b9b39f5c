import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { KitchenServer } from '#bin/kitchen-server.ts';
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
import { demoKitchen, ofKind } from './demo-kitchen.ts';
import { openWire, type Wire } from './wire.ts';

// A server, a database, a browser and two phones on a busy machine.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 600_000 });

let kitchen: KitchenServer;
let wire: Wire;
let browser: Browser;
let pit: Page; // its network is cut
let line: Page;
const faults: string[] = [];

async function newPhone(): Promise<Page> {
  const page = await (await phone(browser)).newPage();
  page.setDefaultTimeout(90_000);
  page.on('pageerror', (fault) => faults.push(String(fault)));
  return page;
}

beforeAll(async () => {
  kitchen = await demoKitchen();
  wire = await openWire(Number(new URL(kitchen.url).port));
  browser = await openBrowser();
  [pit, line] = [await newPhone(), await newPhone()];
  await letIn(pit, wire.url);
  await letIn(line, kitchen.url);
});
afterAll(async () => {
  await browser?.close();
  await wire?.close();
  await kitchen?.stop();
});

const batchId = async (): Promise<string> =>
  (await ofKind(kitchen, 'batch')).find(({ body }) => body.name === 'BR-C')?.body.batch ?? '';
const moves = async () => {
  const batch = await batchId();
  return (await ofKind(kitchen, 'step')).filter(
    ({ body, device }) => body.batch === batch && body.step === 'hot_hold' && device !== null,
  );
};

/** Moves pieces 1 and 2 of the batch. */
async function move(page: Page, url: string, to: RegExp): Promise<void> {
  await page.goto(`${url}/batch/${await batchId()}/next?to=move`);
  for (const key of [/^all 5$/, /^1/, /^2/, to, /Write it in the book/]) await pressOn(page, key);
  await page.waitForURL(/wrote=/);
}

const sold = async (): Promise<number> => {
  const batch = await batchId();
  return (await ofKind(kitchen, 'step')).filter(
    ({ body }) => body.batch === batch && body.step === 'gone' && body.pieces?.[0] === 5,
  ).length;
};

const crossed = 'Two entries say otherwise about the same food';

describe('two people move the same pieces, one of them without network', () => {
  test('both moves come into the book, and the batch says that they cross', async () => {
    await eventually(() => isReady(pit)).toBe(true);
    const before = (await moves()).length;
    wire.cut();
    await move(pit, wire.url, /^Cabinet 2/);
    expect(await rowsOn(pit, 'out')).toBeGreaterThan(0);
    await move(line, kitchen.url, /^Cabinet 3/);
    await eventually(async () => (await moves()).length).toBe(before + 1);
    expect(await wordsOn(line)).not.toContain(crossed);
    wire.mend();
    await pit.goto(`${wire.url}/`);
    await eventually(() => rowsOn(pit, 'out')).toBe(0);
    expect((await moves()).length).toBe(before + 2);
    await line.goto(`${kitchen.url}/batch/${await batchId()}`, { waitUntil: 'networkidle' });
    await eventually(() => wordsOn(line)).toContain(crossed);
    expect(await wordsOn(line)).toMatch(/DM: hot hold, Cabinet 2, pieces 1, 2 \(entry \d+\)/);
    await pictureOf(line, 'crossed');
  });

  test('taking one back settles it by a new entry, and nothing is overwritten', async () => {
    const both = await moves();
    await line
      .getByRole('button', { name: /^Take back entry/ })
      .first()
      .click();
    await eventually(() => wordsOn(line)).not.toContain(crossed);
    await pictureOf(line, 'crossed-settled');
    expect(await moves()).toEqual(both);
    const ids = both.slice(-2).map(({ id }) => id);
    const struck = (await ofKind(kitchen, 'amendment')).filter(({ body }) => ids.includes(body.target));
    expect(struck.map(({ body }) => [body.field, body.to])).toEqual([['struck', 'true']]);
  });
});

describe('a phone is put out while it is without network', () => {
  test('it loses its copy of the book, and keeps what it had not sent', async () => {
    wire.cut();
    await pit.goto(`${wire.url}/batch/${await batchId()}/next?to=gone`);
    for (const key of [/^all 5$/, /^5/, /^sold$/, /Write it in the book/]) await pressOn(pit, key);
    await pit.waitForURL(/wrote=/);
    await line.goto(`${kitchen.url}/health`, { waitUntil: 'networkidle' });
    await pressOn(line, /^Put out pit phone/);
    await pictureOf(line, 'put-out');
    await pressOn(line, /^Yes, put out pit phone/);
    await eventually(() => wordsOn(line)).not.toContain('Yes, put out');
    await eventually(() => line.getByRole('button', { name: /^Put out/ }).count()).toBe(0);
    wire.mend();
    await pit.goto(`${wire.url}/`, { waitUntil: 'networkidle' });
    await eventually(() => rowsOn(pit, 'book')).toBe(0);
    expect(await rowsOn(pit, 'out')).toBe(1);
    expect(await sold()).toBe(0);
  });

  test('let in again, with its writer signed in, it sends that', async () => {
    await letIn(pit, wire.url);
    await eventually(() => rowsOn(pit, 'out')).toBe(0);
    expect(await sold()).toBe(1);
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
