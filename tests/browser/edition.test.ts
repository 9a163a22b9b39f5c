import type { Browser, BrowserContext, Page } from 'playwright-core';
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
import { type Editions, openEditions } from './editions.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 600_000 });

let kitchen: KitchenServer;
let editions: Editions;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let round: Page;
const faults: string[] = [];
const announced = 'A new edition of Holdproof is ready.';

async function newPage(): Promise<Page> {
  const made = await context.newPage();
  made.setDefaultTimeout(90_000);
  made.on('pageerror', (fault) => faults.push(String(fault)));
  return made;
}

/** The worker that rules this page, and the one that waits. */
const workers = (): Promise<{ waiting: boolean; opened: number }> =>
  page.evaluate(async () => ({
    waiting: (await navigator.serviceWorker.ready).waiting !== null,
    opened: performance.timeOrigin,
  }));

beforeAll(async () => {
  kitchen = await demoKitchen();
  editions = await openEditions(Number(new URL(kitchen.url).port));
  browser = await openBrowser();
  context = await phone(browser);
  page = await newPage();
});
afterAll(async () => {
  await browser?.close();
  await editions?.close();
  await kitchen?.stop();
});

describe('a new edition of the program', () => {
  test('that broke off for want of one file is begun again when the network is back', async () => {
    editions.whole(false);
    await letIn(page, editions.url);
    await page.waitForLoadState('networkidle');
    const isThere = () =>
      page.evaluate(async () => (await navigator.serviceWorker.getRegistration()) !== undefined);
    await eventually(isThere).toBe(false);
    editions.whole(true);
    await context.setOffline(true);
    await context.setOffline(false);
    await eventually(() => isReady(page)).toBe(true);
  });

  test('is not announced while the phone has the newest', async () => {
    expect(await wordsOn(page)).not.toContain(announced);
  });

  test('is announced on kitchen now, and not on a round that is open', async () => {
    round = await newPage();
    await round.goto(`${editions.url}/round`);
    await round.getByRole('button', { name: /^Save/ }).first().waitFor();
    editions.entries(false);
    await round.keyboard.type('126.1');
    await pressOn(round, /^Save/);
    await pressOn(round, /^red/);
    await pressOn(round, /^Save/);
    await eventually(() => rowsOn(round, 'out')).toBeGreaterThan(0);
    await round.keyboard.type('13');

    editions.next();
    await page.bringToFront();
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await eventually(() => wordsOn(page)).toContain(announced);
    await pictureOf(page, 'new-edition');
    expect(await wordsOn(round)).not.toContain(announced);
  });

  test('is not taken over an open round: the phone says so, and what is typed there stays', async () => {
    const { opened } = await workers();
    await pressOn(page, 'take it now');
    await eventually(() => wordsOn(page)).toContain('A round is open on this phone.');
    expect(await workers()).toEqual({ waiting: true, opened });
    expect(await wordsOn(round)).toMatch(/\b13\b/);
  });

  test('is taken by a tap once the round is left, and what was not sent is still there', async () => {
    await round.close();
    const { opened } = await workers();
    await pressOn(page, 'take it now');
    await eventually(async () => (await workers()).opened).toBeGreaterThan(opened);
    await eventually(() => wordsOn(page)).toContain('Kitchen now');
    expect((await workers()).waiting).toBe(false);
    expect(await wordsOn(page)).not.toContain(announced);
    expect(await rowsOn(page, 'out')).toBeGreaterThan(0);
    editions.entries(true);
    await eventually(() => rowsOn(page, 'out')).toBe(0);
    const typed = (await ofKind(kitchen, 'reading')).map(({ body }) => body.typed);
    expect(typed.filter((one) => one === '126.1')).toHaveLength(1);
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
