import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { nothingTold } from './run.ts';

const room = mkdtempSync(join(tmpdir(), 'soak-'));
afterAll(() => rmSync(room, { recursive: true }));

test('a soak that was stopped goes on where it was, and says what another edition judged', {
  timeout: 300_000,
}, () => {
  const state = join(room, 'state.json');
  const told = { ...nothingTold(), histories: 5000 };
  const stopped = { histories: 6000, from: 0, done: [0], told, by: { elsewhere: 5000 } };
  writeFileSync(state, JSON.stringify(stopped));
  const soak = new URL('./soak.ts', import.meta.url).pathname;
  const ran = spawnSync(process.execPath, [soak, '--histories', '6000', '--state', state], {
    encoding: 'utf8',
  });
  expect(ran.stderr).toContain('Going on after 5000 histories.');
  expect(ran.stdout).toContain('6000 histories, 0 findings');
  expect(ran.stdout).toContain('5000 of them by another edition of the judge or the machine');
  expect(ran.status).toBe(0);
  const kept = JSON.parse(readFileSync(state, 'utf8')) as typeof stopped;
  expect(kept.done).toEqual([0, 5000]);
  expect(Object.values(kept.by)).toEqual([5000, 1000]);
});
