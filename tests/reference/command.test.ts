import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';

const script = fileURLToPath(new URL('../../bin/reference.ts', import.meta.url));
const cases = fileURLToPath(new URL('20-limits.json', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'reference-'));
afterAll(() => rmSync(folder, { recursive: true }));

function run(...args: string[]) {
  const { status, stdout } = spawnSync(process.execPath, [script, ...args], { encoding: 'utf8' });
  return { status, lines: stdout.trimEnd().split('\n') };
}

test('the command ends with 0 and the count when every case passed', () => {
  expect(run(cases)).toEqual({ status: 0, lines: ['138 passed, 0 failed'] });
});

test('the command names what failed with expected and got, counts an unreadable file, and ends with 1', () => {
  const wrong = join(folder, 'wrong.json');
  const check = { bath: 'ice', expected: 32, read: 34.1, unit: 'degF' };
  const one = {
    id: 'PC-9',
    kind: 'probe_check',
    inputs: { profile: 'fda_2022', facts: check },
    expected: { verdict: 'kept' },
  };
  writeFileSync(wrong, JSON.stringify({ cases: [one] }));
  const { status, lines } = run(wrong, join(folder, 'none.json'));
  expect(status).toBe(1);
  expect(lines.slice(0, 4)).toEqual([
    `${wrong}: PC-9 failed`,
    '  verdict',
    '    expected "kept"',
    '    got      "broken"',
  ]);
  expect(lines.at(-1)).toBe('0 passed, 2 failed');
});
