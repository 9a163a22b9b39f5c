import { type Browser, type BrowserContext, chromium } from 'playwright-core';

/** Debian's Chromium without a window; as root it has no sandbox of its own. It asks nobody outside. */
export function openBrowser(): Promise<Browser> {
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
