import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { KitchenServer } from '#bin/kitchen-server.ts';
import type { EntryOf, Kind } from '#shared/entries/entry.ts';
import { eventually, letIn, openBrowser, phone, pressOn, wordsOn } from './browser.ts';
import { demoKitchen, ofKind as ofKindIn } from './demo-kitchen.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 600_000 });

let kitchen: KitchenServer;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  kitchen = await demoKitchen();
  browser = await openBrowser();
  page = await (await phone(browser)).newPage();
  page.setDefaultTimeout(90_000);
  page.on('pageerror', (fault) => faults.push(String(fault)));
});
afterAll(async () => {
  await browser?.close();
  await kitchen?.stop();
});

const press = (name: string | RegExp) => pressOn(page, name);
const words = () => wordsOn(page);
const ofKind = <K extends Kind>(kind: K): Promise<EntryOf<K>[]> => ofKindIn(kitchen, kind);

const batchNamed = async (name: string): Promise<string> => {
  const found = (await ofKind('batch')).find(({ body }) => body.name === name);
  if (!found) throw new Error(`no batch ${name}`);
  return found.body.batch;
};

/** The newest entry of a kind, once there are more of them than before. */
async function written<K extends Kind>(kind: K, act: () => Promise<void>): Promise<EntryOf<K>> {
  const before = (await ofKind(kind)).length;
  await act();
  await eventually(async () => (await ofKind(kind)).length).toBeGreaterThan(before);
  const newest = (await ofKind(kind)).reduce((a, b) => (b.seq > a.seq ? b : a));
  return newest;
}

describe('what happens to food, by the keys of a phone', () => {
  test('a new device is let in by the manager’s own secret, which signs the manager in as well', async () => {
    await letIn(page, kitchen.url);
  });

  test('one piece is gone an hour ago: the step says when it went, not when it was typed', async () => {
    const batch = await batchNamed('BR-C');
    await page.goto(`${kitchen.url}/batch/${batch}/next?to=gone`);
    const step = await written('step', async () => {
      for (const key of [/^all 5$/, /^5/, /^sold$/, /^1 h ago$/, /Write it in the book/]) await press(key);
    });
    expect(step.body).toMatchObject({ step: 'gone', pieces: [5], details: { reason: 'sold' } });
    const agoMin = (Date.parse(step.entered_at) - Date.parse(step.at)) / 60_000;
    expect(agoMin).toBeGreaterThan(58);
    expect(agoMin).toBeLessThan(62);
  });

  test('two pieces move to another cabinet', async () => {
    const batch = await batchNamed('BR-C');
    await page.goto(`${kitchen.url}/batch/${batch}/next?to=move`);
    const step = await written('step', async () => {
      for (const key of [/^all 4$/, /^1/, /^2/, /^Cabinet 2/, /Write it in the book/]) await press(key);
    });
    const cabinet = (await ofKind('equipment')).find(({ body }) => body.name === 'Cabinet 2');
    expect(step.body).toMatchObject({ step: 'hot_hold', pieces: [1, 2], equipment: cabinet?.body.equipment });
  });

  test('a shift change lists what is still open', async () => {
    await page.goto(`${kitchen.url}/shift`);
    expect(await words()).toContain('Still open');
  });

  test('the language is changed on the device, and the round speaks it', async () => {
    await page.goto(`${kitchen.url}/kitchen/more`);
    await press('Español');
    await page.waitForLoadState('networkidle');
    await page.goto(`${kitchen.url}/round`);
    await eventually(words).toContain('Guardar');
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
