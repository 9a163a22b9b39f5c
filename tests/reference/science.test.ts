import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { runFile } from '#bin/reference/run.ts';

const textOf = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');

/** Files and how many cases (or sets) each holds; every case names its source. */
const files: [name: string, cases: number][] = [
  ['01-cooling-rate.json', 18],
  ['02-conduction.json', 27],
  ['03-forecast.json', 9],
  ['03b-forecast-sets.json', 12],
  ['04-rest-hold-reheat.json', 10],
  ['05-lethality.json', 11],
  ['06-growth.json', 24],
  ['07-bounds.json', 8],
  ['08-spc.json', 7],
  ['09-thermometer.json', 15],
  ['10-sampling.json', 11],
  ['11-time.json', 13],
];

describe('lib/science answers every case as its source expects', () => {
  test.each(files)('%s: %i', (name, cases) => {
    const outcomes = runFile(textOf(name));
    expect(outcomes.filter(({ passed }) => !passed)).toEqual([]);
    expect(outcomes).toHaveLength(cases);
  });
});

type Said = { value: unknown; unit: string };
type Case = { id: string; expected: Record<string, Said>; tolerance: Record<string, { exact?: boolean }> };

/** Twice as large and one more, the other way round, or a number where there is none: further off than any tolerance. */
function other(value: unknown): unknown {
  if (value === null) return 1;
  if (typeof value === 'number') return value * 2 + 1;
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'string') return `${value}.`;
  return Array.isArray(value) ? [...value, 1] : value;
}

describe('a wrong expectation is refused', () => {
  test.each(files.filter(([name]) => !name.startsWith('03b')))('%s', (name) => {
    const { cases } = JSON.parse(textOf(name)) as { cases: Case[] };
    const wrong = cases.flatMap((one) =>
      Object.entries(one.expected).map(([member, said]) => ({
        ...one,
        expected: { ...one.expected, [member]: { ...said, value: other(said.value) } },
      })),
    );
    const passed = runFile(JSON.stringify({ cases: wrong })).filter((outcome) => outcome.passed);
    expect(wrong.length).toBeGreaterThan(0);
    expect(passed).toEqual([]);
  });
});
