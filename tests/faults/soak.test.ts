import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { killPlan } from './plan.ts';
import { partsOf } from './soak-parts.ts';
import { saveState, stateOf } from './soak-state.ts';

const folder = mkdtempSync(join(tmpdir(), 'holdproof-soak-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('25 kills are three parts beside the other suites, and each kill of the plan is in one of them', () => {
  const parts = partsOf(['kill.test.ts', 'network.test.ts', 'clock.test.ts'], 25);
  expect(parts.map(({ name }) => name)).toEqual([
    'clock.test.ts',
    'network.test.ts',
    'kills 1 to 10',
    'kills 11 to 20',
    'kills 21 to 25',
  ]);
  const byParts = parts
    .filter(({ file }) => file === 'kill.test.ts')
    .flatMap(({ from, rounds }) => killPlan(7, from + rounds).slice(from));
  expect(byParts).toEqual(killPlan(7, 25));
});

test('a soak that was stopped goes on with its seed; one of another length, or at its end, begins anew', () => {
  const file = join(folder, 'state.json');
  const asked = { rounds: 20, awayS: 60, seed: null };
  saveState(file, { rounds: 20, awayS: 60, seed: '11', done: { 'kills 1 to 10': null } });
  expect(stateOf(file, asked, 2)).toMatchObject({ seed: '11', done: { 'kills 1 to 10': null } });
  expect(stateOf(file, { ...asked, seed: '12' }, 2)).toMatchObject({ seed: '12', done: {} });
  expect(stateOf(file, { ...asked, rounds: 30 }, 2).done).toEqual({});
  expect(stateOf(file, asked, 1).done).toEqual({});
});
