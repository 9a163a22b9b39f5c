import { createHash, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { certificateFile } from '#bin/certificate/own-certificate.ts';
import { freePort, type KitchenServer } from '#bin/kitchen-server.ts';
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

vi.setConfig({ testTimeout: 240_000, hookTimeout: 600_000 });

const name = 'pit.test'; // a name of the kitchen's network: not this machine itself, for which no seal is asked
let kitchen: KitchenServer;
let browser: Browser;
let plain = '';
let sealed = '';
const faults: string[] = [];

/** What the browser is told to trust: the key of the server's certificate, and no other fault of any certificate. */
function keyHash(): string {
  const kept = JSON.parse(readFileSync(certificateFile(kitchen.data), 'utf8')) as {
    server: { certificate: string };
  };
  const key = new X509Certificate(kept.server.certificate).publicKey.export({ type: 'spki', format: 'der' });
  return createHash('sha256').update(key).digest('base64');
}

async function newPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(90_000);
  page.on('pageerror', (fault) => faults.push(String(fault)));
  return page;
}

beforeAll(async () => {
  const port = await freePort();
  kitchen = await demoKitchen({ HTTPS_PORT: String(port), HOLDPROOF_NAMES: name });
  plain = `http://${name}:${new URL(kitchen.url).port}`;
  sealed = `https://${name}:${port}`;
  browser = await openBrowser([
    `--host-resolver-rules=MAP ${name} 127.0.0.1`,
    `--ignore-certificate-errors-spki-list=${keyHash()}`,
  ]);
});
afterAll(async () => {
  await browser?.close();
  await kitchen?.stop();
});

describe('on plain http in the kitchen’s network', () => {
  let context: BrowserContext;
  let page: Page;
  beforeAll(async () => {
    context = await phone(browser);
    page = await newPage(context);
  });

  test('kitchen now says that going on without network is unavailable here, and leads to the way', async () => {
    await letIn(page, plain);
    expect(await page.evaluate(() => window.isSecureContext)).toBe(false);
    await eventually(() => wordsOn(page)).toContain('This phone cannot go on without network here');
    await pictureOf(page, 'plain-kitchen');
    await pressOn(page, 'show how');
    await page.waitForURL(/\/reach\/secure$/);
    await eventually(() => wordsOn(page)).toContain('The sealed address');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await pictureOf(page, 'reach-secure');
  });

  test('the page shows the fingerprint that the terminal shows, and gives the certificate that has it', async () => {
    const said = /fingerprint, to compare: ([0-9A-F:]{95})/.exec(kitchen.said())?.[1] ?? 'nothing was said';
    expect((await wordsOn(page)).replace(/\s/g, '')).toContain(said);
    expect(await wordsOn(page)).toContain(sealed);
    const given = await page.request.get(`${kitchen.url}/reach/certificate`);
    expect(given.headers()['content-type']).toBe('application/x-x509-ca-cert');
    const certificate = new X509Certificate(await given.body());
    expect(certificate.fingerprint256).toBe(said);
    expect(certificate.ca).toBe(true);
  });

  test('it is there in Spanish too, and fits', async () => {
    await page.goto(`${plain}/kitchen/more`);
    await pressOn(page, 'Español');
    await page.waitForLoadState('networkidle');
    await page.goto(`${plain}/reach/secure`);
    await eventually(() => wordsOn(page)).toContain('La dirección sellada');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await pictureOf(page, 'reach-secure-es');
    await page.goto(`${plain}/`);
    await eventually(() => wordsOn(page)).toContain('Sin red, este teléfono no sigue aquí');
    await pictureOf(page, 'plain-kitchen-es');
    await page.goto(`${plain}/kitchen/more`);
    await pressOn(page, 'English');
    await page.waitForLoadState('networkidle');
  });

  test('an open page keeps a figure while the network is away, and sends it when it is back', async () => {
    const typed = async () => (await ofKind(kitchen, 'reading')).map(({ body }) => body.typed);
    const before = (await typed()).length;
    await page.goto(`${plain}/round`);
    await page.getByRole('button', { name: /^Save/ }).first().waitFor();
    await page.waitForLoadState('networkidle'); // what a figure needs is here before the network goes
    await context.setOffline(true);
    await page.keyboard.type('127.3');
    await pressOn(page, /^Save/);
    await pressOn(page, /^red/);
    await pressOn(page, /^Save/);
    await eventually(() => rowsOn(page, 'out')).toBeGreaterThan(0);
    await eventually(() => wordsOn(page)).toContain('on this phone');
    await pictureOf(page, 'plain-round');
    expect((await typed()).length).toBe(before);
    await context.setOffline(false);
    await eventually(() => rowsOn(page, 'out')).toBe(0);
    expect((await typed()).filter((one) => one === '127.3')).toHaveLength(1);
  });
});

describe('on the sealed address', () => {
  test('the browser takes it for secure, the worker is registered and the phone made ready', async () => {
    const context = await phone(browser);
    const page = await newPage(context);
    await letIn(page, sealed);
    expect(await page.evaluate(() => window.isSecureContext)).toBe(true);
    await eventually(() => isReady(page)).toBe(true);
    const worker = await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.scriptURL);
    expect(worker).toBe(`${sealed}/serwist/sw.js`);
    expect(await wordsOn(page)).not.toContain('cannot go on without network');
    const cookies = await context.cookies(sealed);
    expect(cookies.find((cookie) => cookie.name === 'device')?.secure).toBe(true);
  });

  test('a browser that did not accept the certificate is warned and gets no page', async () => {
    const wary = await openBrowser([`--host-resolver-rules=MAP ${name} 127.0.0.1`]);
    try {
      const page = await (await phone(wary)).newPage();
      await expect(page.goto(sealed)).rejects.toThrow('ERR_CERT_AUTHORITY_INVALID');
    } finally {
      await wary.close();
    }
  });

  test('no page has thrown', () => expect(faults).toEqual([]));
});
