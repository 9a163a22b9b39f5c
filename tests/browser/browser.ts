import { mkdirSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { demoSecrets } from '#db/demo/fill.ts';

/** Debian's Chromium without a window; as root it has no sandbox of its own. It asks nobody outside. */
export function openBrowser(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
}

/** A phone in the pit: 360 by 780, touch. */
export const phone = (
  browser: Browser,
  more: { locale?: string; colorScheme?: 'light' | 'dark' } = {},
): Promise<BrowserContext> =>
  browser.newContext({
    viewport: { width: 360, height: 780 },
    hasTouch: true,
    isMobile: true,
    timezoneId: 'America/Chicago',
    ...more,
  });

const patienceMs = 60_000; // a busy machine; the runner's own patience is one second

/** Asks until the answer is the expected one: what a screen or the book says after a while. */
export const eventually = <T>(ask: () => T | Promise<T>) => expect.poll(ask, { timeout: patienceMs });

/** What a person can read on the screen now. */
export const wordsOn = (page: Page): Promise<string> => page.locator('body').innerText();

/** Presses the first key, pick, box or link with these words. */
export const pressOn = (page: Page, name: string | RegExp): Promise<void> =>
  page
    .getByRole('button', { name })
    .or(page.getByRole('radio', { name }))
    .or(page.getByRole('checkbox', { name }))
    .or(page.getByRole('link', { name }))
    .first()
    .click();

/** Lets this device into the invented kitchen by its manager's own secret, which signs the manager in as well. */
export async function letIn(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/sign-in`, { waitUntil: 'networkidle' }); // a form that is not awake yet loses what is typed
  await page.getByLabel(/called/).fill('pit phone');
  await page.getByLabel(/Name of the manager/).fill('Delia Marchbanks');
  await page.getByLabel(/Secret of that person/).fill(demoSecrets.manager);
  const key = page.getByRole('button', { name: /Let this device in/ }).last(); // the first one is for a code
  await key.click();
  await page.waitForURL((to) => to.pathname === '/', { waitUntil: 'commit' });
}

/** How many rows this phone's own store has in a table; 0 while there is no such table. */
export const rowsOn = (page: Page, table: 'out' | 'book'): Promise<number> =>
  page.evaluate(
    (name) =>
      new Promise<number>((done, fail) => {
        const open = indexedDB.open('holdproof');
        open.onerror = () => fail(open.error);
        open.onsuccess = () => {
          const close = (rows: number): void => {
            open.result.close();
            done(rows);
          };
          if (!open.result.objectStoreNames.contains(name)) return close(0);
          const count = open.result.transaction(name).objectStore(name).count();
          count.onsuccess = () => close(count.result);
        };
      }),
    table,
  );

/** The phone has the worker with every file, and the book of now. */
export const isReady = async (page: Page): Promise<boolean> => {
  const working = await page.evaluate(async () => {
    const worker = await navigator.serviceWorker.getRegistration();
    return worker?.active?.state === 'activated' && navigator.serviceWorker.controller !== null;
  });
  return working && (await rowsOn(page, 'book')) > 0;
};

/** A picture for whoever looks at the screens: HOLDPROOF_PICTURES names the folder. */
export async function pictureOf(page: Page, name: string): Promise<void> {
  const folder = process.env.HOLDPROOF_PICTURES;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}
