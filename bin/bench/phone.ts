import { join } from 'node:path';
import { build } from 'esbuild';
import { chromium, type Page } from 'playwright-core';
import { root } from '../build.ts';
import { chromiumPath } from '../chromium.ts';
import { cooling, hold } from './phone-kitchen.ts';
import type { PhoneKitchen, Took } from './phone-page.ts';
import { quantile } from './ratio.ts';

/** So many times slower than this machine: the browser's own brake for a phone. */
const SLOWER = 6;
const TIMES = 41;

async function bundled(): Promise<string> {
  const made = await build({
    entryPoints: [join(root, 'bin/bench/phone-page.ts')],
    write: false,
    bundle: true,
    minify: true,
    format: 'iife',
    define: { 'process.env.NODE_ENV': '"production"' },
  });
  return made.outputFiles[0]?.text ?? '';
}

/** In a page of its own, so that the first call finds nothing warm. */
async function took(
  page: Page,
  script: string,
  sum: 'forecast' | 'proof',
  kitchen: PhoneKitchen,
): Promise<Took> {
  await page.goto('about:blank');
  await page.addScriptTag({ content: script });
  return page.evaluate(
    ([name, given, times]) =>
      (
        globalThis as unknown as {
          holdproofBench: Record<string, (kitchen: PhoneKitchen, times: number) => Took>;
        }
      ).holdproofBench[name]?.(given, times) ?? { first: Number.NaN, later: [], found: 0 },
    [sum, kitchen, TIMES] as const,
  );
}

/** The least beside the median: a busy machine stretches every call but a few. */
function line(words: string, { first, later, found }: Took, goal: number): string {
  if (found === 0) throw new Error(`bench: ${words} found nothing`);
  const middle = quantile(later, 0.5);
  const verdict = middle < goal ? 'within the goal' : 'OVER the goal';
  const others = `least ${Math.min(...later).toFixed(1)} ms, p95 ${quantile(later, 0.95).toFixed(1)} ms`;
  return `${words}: median ${middle.toFixed(1)} ms (goal < ${goal} ms, ${verdict}), ${others}, first call ${first.toFixed(1)} ms; ${later.length} values`;
}

/** What the sums between two looks take in Chromium, slowed down as far as a phone is slower. */
export async function phone(): Promise<string[]> {
  const script = await bundled();
  const browser = await chromium.launch({
    executablePath: chromiumPath(),
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    const page = await browser.newPage();
    const brake = await page.context().newCDPSession(page);
    await brake.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    return [
      line(
        `forecast of a cooling with eight readings, ${SLOWER}× slower`,
        await took(page, script, 'forecast', cooling()),
        50,
      ),
      line(
        `proof line of a 20 h hold with a reading a minute, drawn and in four levels, ${SLOWER}× slower`,
        await took(page, script, 'proof', hold()),
        16,
      ),
    ];
  } finally {
    await browser.close();
  }
}
