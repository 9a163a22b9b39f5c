import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, renameSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { buildIfChanged, root } from './build.ts';
import { chromiumPath } from './chromium.ts';
import { type KitchenServer, startKitchen } from './kitchen-server.ts';
import { say } from './say.ts';
import { eveningDrafts, eveningKitchen } from './screenshots/invented-evening.ts';
import { setUpKitchen } from './visitor.ts';

/** `npm run screenshots`: the README's pictures, of an invented evening, into docs/screenshots. */
const folder = join(root, 'docs/screenshots');
mkdirSync(folder, { recursive: true });

async function shoot(page: Page, url: string, path: string, name: string): Promise<void> {
  await page.goto(`${url}${path}`, { waitUntil: 'networkidle' });
  await page.screenshot({ path: join(folder, `${name}.png`) });
  say(`  ${name}.png`);
}

async function phoneShots(kitchen: KitchenServer, cookie: string): Promise<void> {
  const browser = await chromium.launch({
    executablePath: chromiumPath(),
    args: ['--no-sandbox', '--disable-gpu'],
  });
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
  });
  const cookies = cookie.split('; ').map((pair) => {
    const at = pair.indexOf('=');
    return { name: pair.slice(0, at), value: pair.slice(at + 1), url: kitchen.url };
  });
  await context.addCookies([...cookies, { name: 'room', value: 'pit', url: kitchen.url }]);
  const page = await context.newPage();
  await shoot(page, kitchen.url, '/', 'kitchen-phone');
  await context.addCookies([{ name: 'room', value: 'day', url: kitchen.url }]);
  await shoot(page, kitchen.url, '/cooling', 'cooling-phone');
  await page.goto(`${kitchen.url}/round`, { waitUntil: 'networkidle' });
  await page.getByRole('button', { name: /thermometer/ }).click();
  await page.getByRole('button', { name: /^red/i }).click();
  await page.keyboard.type('142.6');
  await page.screenshot({ path: join(folder, 'round-phone.png') });
  say('  round-phone.png');
  await browser.close();
}

async function evening(): Promise<void> {
  const kitchen = await startKitchen();
  try {
    const things = eveningKitchen();
    const { headers, person } = await setUpKitchen(kitchen.url, things.starting, {
      name: 'Fox Hollow Smokehouse',
    });
    const drafts = eveningDrafts({ now: Date.now(), by: person, kitchen: things });
    const answer = await fetch(`${kitchen.url}/api/entries`, {
      method: 'POST',
      headers,
      body: JSON.stringify(drafts),
    });
    const { receipts } = (await answer.json()) as { receipts: { problem: unknown }[] };
    const refused = receipts.filter(({ problem }) => problem !== null);
    if (refused.length > 0) throw new Error(`screenshots: refused ${JSON.stringify(refused[0])}`);
    await phoneShots(kitchen, headers.cookie ?? '');
  } finally {
    await kitchen.stop();
  }
}

/** The signed sheet of the demo night, its first page, through Debian's poppler-utils. */
function sheetShot(): void {
  const place = mkdtempSync(join(tmpdir(), 'holdproof-sheet-'));
  const env = { ...process.env, HOLDPROOF_DATA: join(place, 'data') };
  const command = (...args: string[]): void => {
    const done = spawnSync(process.execPath, [join(root, 'bin/holdproof.ts'), ...args], {
      env,
      encoding: 'utf8',
    });
    if (done.status !== 0)
      throw new Error(`screenshots: ${args[0]} ended with ${done.status}: ${done.stderr}`);
  };
  const pdf = join(place, 'sheet.pdf');
  command('demo', '--fixed');
  command('sheet', '--day', '2026-10-16', '--format', 'pdf', '--out', pdf);
  const drawn = spawnSync('pdftoppm', [
    '-r',
    '110',
    '-f',
    '1',
    '-l',
    '1',
    '-png',
    '-singlefile',
    pdf,
    join(place, 'page'),
  ]);
  if (drawn.status !== 0) throw new Error('screenshots: pdftoppm is needed (Debian package poppler-utils)');
  renameSync(join(place, 'page.png'), join(folder, 'sheet-page-1.png'));
  say('  sheet-page-1.png');
}

await buildIfChanged();
say('Taking the pictures of docs/screenshots:');
await evening();
sheetShot();
