import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { localModule, localModuleFile } from '#bin/local-module.ts';
import { profileSource, resolved } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';

const example = /```json\n([\s\S]*?)```/.exec(readFileSync('DEVELOPERS.md', 'utf8'))?.[1] ?? '';

function inFolder<T>(text: string, use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'holdproof-local-'));
  try {
    writeFileSync(join(folder, 'millbrook.json'), text);
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

it('the module of local profiles is that of the folder', () => {
  expect(readFileSync(localModuleFile, 'utf8')).toBe(localModule());
});

it('the worked example of DEVELOPERS.md is picked up, and holds at 140 °F with the rest FDA’s', () => {
  expect(inFolder(example, localModule)).toContain("from './local/millbrook.json'");
  const town = resolved(profileSource.parse(JSON.parse(example)), profile('fda_2022'));
  expect(town.figures.hot_hold).toMatchObject({
    value: { degF: 140, degC: 60 },
    section: 'Town code 7-12',
  });
  expect(town.figures.hot_hold_roast).toBeNull();
  expect(town.figures.cold_hold?.section).toBe('3-501.16(A)(2)');
});

it('a local file whose figure has no section is refused with its name', () => {
  const without = example.replace(/ *"section": "Town code 7-12",\n/, '');
  expect(without).not.toBe(example);
  expect(() => inFolder(without, localModule)).toThrow(/millbrook\.json[\s\S]*section/);
});
