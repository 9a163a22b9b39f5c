import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { KitchenServer } from '#bin/kitchen-server.ts';
import { letIn, openBrowser, phone, pictureOf, wordsOn } from './browser.ts';
import { demoKitchen } from './demo-kitchen.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 300_000 });

let kitchen: KitchenServer;
let browser: Browser;

beforeAll(async () => {
  [kitchen, browser] = await Promise.all([demoKitchen(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await kitchen?.stop();
});

describe('an address that is none of the book’s', () => {
  test('is answered in words, in the language of the phone, with the way back to the kitchen', async () => {
    const context = await phone(browser);
    const page = await context.newPage();
    await letIn(page, kitchen.url);
    const answer = await page.goto(`${kitchen.url}/brisket`, { waitUntil: 'networkidle' });
    expect(answer?.status()).toBe(404);
    expect(await wordsOn(page)).toContain('No page here');
    await pictureOf(page, 'lost');
    await context.addCookies([{ name: 'language', value: 'es', url: kitchen.url }]);
    await page.goto(`${kitchen.url}/day/2026-13-41`, { waitUntil: 'networkidle' });
    expect(await wordsOn(page)).toContain('Aquí no hay página');
    await page.getByRole('link', { name: 'La cocina ahora' }).click();
    await page.waitForURL(`${kitchen.url}/`);
    await context.close();
  });
});
