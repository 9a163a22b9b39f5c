import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCheck } from '#bin/check.ts';

const folder = mkdtempSync(join(tmpdir(), 'explain-'));
afterAll(() => rmSync(folder, { recursive: true }));

const header = 'batch,food,step,time,value,unit,spot,piece,probe,held_s,equipment';
function file(name: string, lines: string[]): string {
  const path = join(folder, name);
  writeFileSync(path, [header, ...lines, ''].join('\n'));
  return path;
}

async function check(...args: string[]) {
  const out: string[] = [];
  const io = {
    out: (line: string) => void out.push(line),
    err: () => {},
    env: { NODE_ENV: 'test' as const },
  };
  const status = await runCheck(args, io);
  return { status, out: out.join('\n') };
}

const row = (step: string, time: string, value: number, spot: string): string =>
  `b1,beef_whole,${step},${time}-05:00,${value},degF,${spot},,P1,,cab`;
const night = file('night.csv', [
  row('cooling', '2026-05-08T21:50:00', 139, 'core'),
  row('cooling', '2026-05-08T22:00:00', 134, 'core'),
  row('cooling', '2026-05-09T00:00:00', 80, 'core'),
]);

describe('check --explain', () => {
  it('gives the numbered proof: rule, how its figure was checked and binds, readings, ends, conclusion', async () => {
    const { status, out } = await check(night, '--explain');
    expect(status).toBe(1);
    const first = out.slice(out.indexOf('First stage'), out.indexOf('In total'));
    expect(first).toContain('1. The rule: 3-501.14(A)(1), FDA Food Code 2022');
    expect(first).toContain('70 °F / 21 °C or');
    expect(first).toMatch(
      /2026-05-08 22:00 {2}134 °F, thick part.*\n?.*can\s+prove; first after it began \(s_hi\)/,
    );
    // 134 at 22:00 was below 135 already and 80 at 00:00 is above 70: two hours at least, and equal is broken.
    expect(first).toContain('It took 2 h at least; the limit is 2 h.');
    expect(first).toContain('The conclusion: Broken.');
    expect(out).toContain('model code');
    expect(out).toContain('Model code: law only where a state or city adopts it.');
  });

  it('keeps to 80 columns in both languages, and says the same text twice', async () => {
    for (const lang of ['en', 'es']) {
      const one = await check(night, '--explain', '--lang', lang);
      expect(Math.max(...one.out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
      expect((await check(night, '--explain', '--lang', lang)).out).toBe(one.out);
      expect(one.out).not.toMatch(/explain\.|judge\.|common\./);
    }
    expect((await check(night, '--explain', '--lang', 'es')).out).toContain('La conclusión: No cumplido.');
  });

  // 1,200 readings a minute apart, 140 °F but for the lowest, 137.2 °F.
  const many = file(
    'many.csv',
    Array.from({ length: 1200 }, (_, minute) => {
      const at = new Date(Date.UTC(2026, 4, 8, 1, minute)).toISOString().slice(0, 19);
      return row('hot_hold', at, minute === 700 ? 137.2 : 140, 'edge');
    }),
  );
  it('draws like readings together, with their lowest, and shows each with --all', async () => {
    const { out } = await check(many, '--explain');
    expect(out).toContain('1200 readings 2026-05-08 01:00 – 2026-05-08 20:59, lowest 137.2 °F');
    expect(out.split('\n').length).toBeLessThan(40);
    const { out: all } = await check(many, '--explain', '--all');
    expect(all.split('\n').filter((line) => line.includes(' 140 °F, thin end')).length).toBe(1199);
  });

  it('gives the data with --json: readings by line, ends with theirs', async () => {
    const { out } = await check(night, '--explain', '--json');
    const [stage] = JSON.parse(out).batches[0].steps[0].proof.stages;
    expect(stage).toMatchObject({
      name: 'stage_1',
      stage: { verdict: 'broken', rests_on: [3, 4] },
      pieces: [
        {
          shortest_min: 120,
          brackets: { s_lo: { lines: [2] }, s_hi: { lines: [3] }, m_lo: { lines: [4] }, m_hi: null },
        },
      ],
    });
    expect(stage.pieces[0].readings.map(({ line }: { line: number }) => line)).toEqual([2, 3, 4]);
  });

  it('refuses a language that it does not have', async () => {
    expect((await check(night, '--explain', '--lang', 'fr')).status).toBe(3);
  });
});

describe('the table of check', () => {
  it('marks each figure that is from memory or no law, with what the mark means below', async () => {
    const { out } = await check(night);
    expect(out).toContain('3-501.14(A)(1) [figure from memory; model code]');
    expect(out).toContain('Figure from memory: the text of this edition was not read');
    expect(out).toContain('Model code: law only where a state or city adopts it.');
  });
});
