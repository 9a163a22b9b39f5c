import { mkdirSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { openBook } from '#db/connect.ts';
import { demoSecrets, fillDemo } from '#db/demo/fill.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { Entry, EntryOf, Kind } from '#shared/entries/entry.ts';
import { openBrowser, phone } from './browser.ts';
import { openWire, type Wire } from './wire.ts';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 });

let kitchen: KitchenServer;
let wire: Wire;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

async function newPage(): Promise<Page> {
  const made = await context.newPage();
  made.setDefaultTimeout(20_000);
  made.on('pageerror', (fault) => faults.push(String(fault)));
  return made;
}

beforeAll(async () => {
  kitchen = await startKitchen();
  const db = await openBook(kitchen.environment);
  await fillDemo(db, { fixed: false, now: Date.now() });
  await db.close();
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

const words = () => page.locator('body').innerText();
const press = (name: string | RegExp) =>
  page
    .getByRole('button', { name })
    .or(page.getByRole('radio', { name }))
    .or(page.getByRole('link', { name }))
    .first()
    .click();

async function ofKind<K extends Kind>(kind: K): Promise<EntryOf<K>[]> {
  const db = await openBook(kitchen.environment);
  try {
    const [site] = await listSites(db);
    const all: Entry[] = site ? await loadAll(db, site.site) : [];
    return all.filter((entry) => entry.kind === kind) as Entry[] as EntryOf<K>[];
  } finally {
    await db.close();
  }
}

/** A picture for whoever looks at the screens: HOLDPROOF_PICTURES names the folder. */
async function picture(name: string): Promise<void> {
  const folder = process.env.HOLDPROOF_PICTURES;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}

/** How many entries this phone holds that are not in the book. */
const heldHere = (): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((done, fail) => {
        const open = indexedDB.open('holdproof');
        open.onerror = () => fail(open.error);
        open.onsuccess = () => {
          const count = open.result.transaction('out').objectStore('out').count();
          count.onsuccess = () => {
            open.result.close();
            done(count.result);
          };
        };
      }),
  );

/** The phone has the worker with every file, and the book of now. */
const isReady = (): Promise<boolean> =>
  page.evaluate(async () => {
    const worker = await navigator.serviceWorker.getRegistration();
    if (worker?.active?.state !== 'activated' || navigator.serviceWorker.controller === null) return false;
    return new Promise<boolean>((done) => {
      const open = indexedDB.open('holdproof');
      open.onerror = () => done(false);
      open.onsuccess = () => {
        if (!open.result.objectStoreNames.contains('book')) return done(false);
        const count = open.result.transaction('book').objectStore('book').count();
        count.onsuccess = () => {
          open.result.close();
          done(count.result > 0);
        };
      };
    });
  });

describe('a phone goes on while nothing answers', () => {
  test('it is made ready by the first visit', async () => {
    await page.goto(`${wire.url}/sign-in`);
    await page.getByLabel(/called/).fill('pit phone');
    await page.getByLabel(/Name of the manager/).fill('Delia Marchbanks');
    await page.getByLabel(/Secret of that person/).fill(demoSecrets.manager);
    await page
      .getByRole('button', { name: /Let this device in/ })
      .last()
      .click();
    await page.waitForURL((url) => url.pathname === '/');
    await expect.poll(isReady, { timeout: 60_000 }).toBe(true);
  });

  test('kitchen now opens without network and says how old it is [demand:68]', async () => {
    wire.cut();
    await page.goto(`${wire.url}/`);
    await expect.poll(words).toContain('No answer from the book');
    expect(await words()).toContain('This is what this phone had at');
    await expect.poll(words).toContain('BR-C');
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
    await expect.poll(heldHere).toBeGreaterThan(0);
    await expect.poll(words).toContain('on this phone');
    await picture('offline-round');
    expect((await ofKind('reading')).length).toBe(before);
  });

  test('batch, deviation list and thermometers are drawn from the phone’s own store', async () => {
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch ?? '';
    await page.goto(`${wire.url}/batch/${batch}`);
    await expect.poll(words).toContain('BR-C');
    expect(await words()).toContain('3-501.16');
    await picture('offline-batch');
    await page.goto(`${wire.url}/deviation`);
    await expect.poll(words).toContain('Deviations');
    await picture('offline-deviations');
    await page.goto(`${wire.url}/probe`);
    await expect.poll(words).toContain('Thermometers');
    await page.goto(`${wire.url}/day`);
    await expect.poll(words).toContain('This page needs the book');
    await picture('offline-needs-the-book');
  });

  test('a piece is sold without network: a form writes too', async () => {
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch ?? '';
    const held = await heldHere();
    await page.goto(`${wire.url}/batch/${batch}/next?to=gone`);
    for (const key of [/^all 5$/, /^5/, /^sold$/, /Write it in the book/]) await press(key);
    await expect.poll(heldHere).toBeGreaterThan(held);
    await page.waitForURL(/wrote=/);
    await expect.poll(words).toContain('4 pieces in Cabinet 1');
    expect(await words()).not.toContain('In the book');
  });

  test('a browser that was killed between the tap and the sending sends when it is opened again', async () => {
    const held = await heldHere();
    await page.close();
    const mended = Date.now();
    wire.mend();
    page = await newPage();
    await page.goto(`${wire.url}/`);
    await expect.poll(heldHere, { timeout: 60_000 }).toBe(0);
    const batch = (await ofKind('batch')).find(({ body }) => body.name === 'BR-C')?.body.batch;
    const readings = (await ofKind('reading')).filter(
      ({ body, received_at: received }) => body.typed === '128.4' && Date.parse(received) >= mended,
    );
    const sold = (await ofKind('step')).filter(
      ({ body }) => body.batch === batch && body.step === 'gone' && body.pieces?.[0] === 5,
    );
    expect(held).toBeGreaterThanOrEqual(2);
    expect(readings).toHaveLength(1);
    expect(sold).toHaveLength(1);
    const late = readings[0];
    expect(Date.parse(late?.received_at ?? '')).toBeGreaterThan(Date.parse(late?.at ?? ''));
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
