import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, test } from 'vitest';
import { runCheck } from '#bin/check.ts';

const folder = mkdtempSync(join(tmpdir(), 'check-'));
afterAll(() => rmSync(folder, { recursive: true }));

const header = 'batch,food,step,time,value,unit,spot,piece,probe,held_s,equipment';
function file(name: string, ...lines: string[]): string {
  const path = join(folder, name);
  writeFileSync(path, [header, ...lines, ''].join('\n'));
  return path;
}

async function check(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    out: (line: string) => void out.push(line),
    err: (line: string) => void err.push(line),
    env: { NODE_ENV: 'test' as const },
  };
  const status = await runCheck(args, io);
  return { status, out: out.join('\n'), err: err.join('\n') };
}

const night = file(
  'night.csv',
  'b1,beef_whole,hot_hold,2026-05-08T20:00:00-05:00,150,degF,edge,,,,cab',
  'b1,beef_whole,cooling,2026-05-08T22:00:00-05:00,134,degF,core,,,,cab',
  'b1,beef_whole,cooling,2026-05-09T00:00:00-05:00,80,degF,core,,,,cab',
);

test('food of a class that no rule names is judged by the strictest, and that is said', async () => {
  const said = 'No class that a rule names: judged by the strictest that could apply.';
  const plain = file('plain.csv', 'b1,brisket,hot_hold,2026-05-08T20:00:00-05:00,150,degF,edge,,,,cab');
  const { out } = await check(plain, '--lang', 'en');
  expect(out).toContain(`b1: brisket. ${said}`);
  expect((await check(plain, '--explain', '--lang', 'en')).out.replace(/\s+/g, ' ')).toContain(said);
  const roast = file('roast.csv', 'b1,intact_roast,hot_hold,2026-05-08T20:00:00-05:00,150,degF,edge,,,,cab');
  expect((await check(roast, '--lang', 'en')).out).not.toContain(said);
});

describe('the answer as JSON', () => {
  it('holds the stages of each step as the cases name them, instants as text', async () => {
    const { status, out } = await check(night, '--json');
    expect(status).toBe(1);
    const { batches, problems } = JSON.parse(out);
    expect(problems).toEqual([]);
    expect(batches).toMatchObject([
      {
        batch: 'b1',
        food: 'beef_whole',
        steps: [
          { step: 'hot_hold', stages: { at_readings: { verdict: 'kept', open: false } } },
          {
            step: 'cooling',
            stages: {
              stage_1: {
                verdict: 'broken',
                longest_min: null,
                shortest_min: 120,
                deadline: '2026-05-09T03:00:00Z',
              },
              total: {
                verdict: 'not_shown',
                open: true,
                deadline: '2026-05-09T07:00:00Z',
                remaining_min: 120,
              },
            },
          },
        ],
      },
    ]);
    expect(batches[0].steps[0]).not.toHaveProperty('reason');
  });
  it('names every problem by line, column and words, and judges nothing', async () => {
    const bad = file('bad.csv', 'b1,beef_whole,hold,2026-05-08T20:00:00-05:00,,degF');
    const { status, out } = await check(bad, '--json', '--limits', 'mars', '--loud');
    expect(status).toBe(3);
    const { batches, problems } = JSON.parse(out);
    expect(batches).toEqual([]);
    expect(problems).toMatchObject([
      { line: 0, column: '--loud' },
      { line: 0, column: '--limits', message: expect.stringContaining('mars') },
      { line: 2, column: 'step', message: expect.stringContaining('hold') },
      { line: 2, column: 'value' },
    ]);
  });
});

describe('the answer as a table', () => {
  it('says step, verdict, figure and section, and that the person in charge decides', async () => {
    const { out, err } = await check(night);
    expect(out).toContain('cooling, from 2026-05-08 22:00, goes on');
    expect(out).toMatch(/First stage +Broken +70 °F or below, within 2 h +3-501\.14\(A\)\(1\)/);
    expect(out).toContain('the person in charge decides');
    expect(err).toContain('night.csv'); // progress is on the other side
    expect(out).not.toContain('night.csv');
  });
  it('never praises', async () => {
    const { out } = await check(night, '--ended');
    expect(out).not.toMatch(/\b(ok|pass(ed)?|fail(ed)?|safe|valid)\b|!/i);
  });
  it('says it in Spanish where the kitchen does', async () => {
    const out: string[] = [];
    const io = {
      out: (line: string) => void out.push(line),
      err: () => {},
      env: { NODE_ENV: 'test' as const, LANG: 'es_MX.UTF-8' },
    };
    expect(await runCheck([night], io)).toBe(1);
    expect(out.join('\n')).toContain('No cumplido');
  });
});

describe('options', () => {
  test.each([
    ['no file', [], 'LOG.csv'],
    ['a file that is not there', [join(folder, 'none.csv')], 'LOG.csv'],
    ['two files', [night, night], 'LOG.csv'],
    ['no value', [night, '--limits'], '--limits'],
    ['a value that is an option', [night, '--limits', '--ended'], '--limits'],
    ['an interval of nought', [night, '--interval', '0'], '--interval'],
    ['an interval in words', [night, '--interval', 'often'], '--interval'],
    ['a moment without offset', [night, '--as-of', '2026-05-09T00:00:00'], '--as-of'],
    ['a moment before the log', [night, '--as-of', '2026-05-01T00:00:00Z'], '--as-of'],
    ['a short unknown one', [night, '-x'], '-x'],
  ])('%s is a problem', async (_, args, column) => {
    const { status, out } = await check(...args, '--json');
    expect(status).toBe(3);
    expect(JSON.parse(out)).toMatchObject({
      batches: [],
      problems: expect.arrayContaining([{ line: 0, column, message: expect.any(String) }]),
    });
  });
  it('take their value with an equals sign too', async () => {
    const { out } = await check(night, '--json', '--as-of=2026-05-08T21:00:00-05:00', '--interval=60');
    expect(JSON.parse(out).batches[0].steps).toMatchObject([
      { stages: { house_plan_interval: { verdict: 'kept' } } },
    ]);
  });
  it('--help says how, and ends with 0', async () => {
    const { status, out } = await check('--help');
    expect(status).toBe(0);
    expect(out).toContain(header);
  });
});
