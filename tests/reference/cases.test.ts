import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { differences } from '#bin/reference/compare.ts';
import { disputed } from '#bin/reference/disputed.ts';
import { runFile } from '#bin/reference/run.ts';

const textOf = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const leftOut = new Set(disputed(textOf('disputed.md')));
const files = [
  { name: '20-limits.json', cases: 138 },
  { name: '21-more-limits.json', cases: 132 },
];

type Expected = Record<string, unknown>;
type Case = { id: string; kind: string; inputs: Record<string, unknown>; expected: Expected };
const casesOf = (name: string): Case[] => JSON.parse(textOf(name)).cases;
const run = (...cases: Case[]) => runFile(JSON.stringify({ cases }));
const failing = (cases: Case[]): string[] => run(...cases).flatMap(({ id, passed }) => (passed ? [] : [id]));

describe.each(files)('the judge answers every case of $name as the source expects', ({ name, cases }) => {
  it('and all of them but the disputed are run', () => {
    const outcomes = runFile(textOf(name), leftOut);
    expect(outcomes.filter(({ passed }) => !passed)).toEqual([]);
    expect(outcomes).toHaveLength(cases - casesOf(name).filter(({ id }) => leftOut.has(id)).length);
  });
});

/** The same case with one thing in its expectation altered by `alter`, wherever a member has the name. */
function altered(one: Case, name: string, alter: (value: unknown) => unknown): Case[] {
  const walk = (value: unknown): unknown[] => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
    return Object.entries(value).flatMap(([key, each]) => {
      const here = key === name ? [{ ...value, [key]: alter(each) }] : [];
      return [...here, ...walk(each).map((deeper) => ({ ...value, [key]: deeper }))];
    });
  };
  return walk(one.expected).map((expected) => ({ ...one, expected: expected as Expected }));
}

const all = files.flatMap(({ name }) => casesOf(name));
const flipped = (verdict: unknown): string => (verdict === 'kept' ? 'not_shown' : 'kept');
const laterBySecond = (instant: unknown): unknown =>
  typeof instant === 'string' ? new Date(Date.parse(instant) + 1000).toISOString() : '2026-05-08T00:00:00Z';

describe('a wrong expectation is refused', () => {
  const alterations: [string, string, (value: unknown) => unknown][] = [
    ['a verdict flipped', 'verdict', flipped],
    ['open flipped', 'open', (open) => open !== true],
    ['a reason added', 'reasons', (reasons) => [...(reasons as string[]), 'preparation'].sort()],
    ['a length off by a hundredth', 'longest_min', (length) => (length === null ? 0 : Number(length) + 0.01)],
    ['a length that is not known', 'shortest_min', () => null],
    ['a deadline off by a second', 'deadline', laterBySecond],
    ['a first bad reading off by a second', 'first_bad', laterBySecond],
    ['another section', 'section', (section) => `${section}.`],
    ['another limit', 'value', (value) => Number(value) + 1],
    ['an allowance flipped', 'roast_cook', flipped],
    ['a last day that is not known', 'last_day', (day) => (day === null ? '2026-05-07' : null)],
    ['a suspect reading more', 'suspect', (suspect) => [...(suspect as number[]), 0]],
  ];
  test.each(alterations)('%s', (_, name, alter) => {
    const wrong = all.flatMap((one) => altered(one, name, alter));
    expect(wrong.length).toBeGreaterThan(0);
    expect(failing(wrong)).toEqual(wrong.map(({ id }) => id));
  });
  test('a piece that may not be served, and the other way round', () => {
    const flip = (pieces: unknown) =>
      Object.fromEntries(
        Object.entries(pieces as Record<string, string>).map(([piece, standing]) => [
          piece,
          standing === 'serve' ? 'do_not_serve' : 'serve',
        ]),
      );
    const wrong = all
      .filter(({ kind }) => kind === 'standing')
      .flatMap((one) => altered(one, 'pieces', flip));
    expect(failing(wrong)).toEqual(wrong.map(({ id }) => id));
  });
  test('a member that no answer has', () => {
    const [one] = all;
    if (one === undefined) throw new Error('no cases');
    expect(failing([{ ...one, expected: { ...one.expected, verdicts: 1 } }])).toEqual([one.id]);
  });
  test('nothing expected at all', () => {
    const [one] = all;
    if (one === undefined) throw new Error('no cases');
    expect(failing([{ ...one, expected: {} }])).toEqual([one.id]);
  });
});

describe('what cannot be run counts as failed', () => {
  test.each([
    [
      'a kind that is not known',
      JSON.stringify({ cases: [{ id: 'X-1', kind: 'levitate', inputs: {}, expected: { a: 1 } }] }),
    ],
    [
      'inputs of another shape',
      JSON.stringify({ cases: [{ id: 'X-1', kind: 'cooling', inputs: {}, expected: { a: 1 } }] }),
    ],
    ['a case without an id', JSON.stringify({ cases: [{ kind: 'cooling' }] })],
    ['a set of a forecast', JSON.stringify({ sets: [{ id: 'S-1' }] })],
    ['no JSON', '{"cases": ['],
    ['a file without cases', '{}'],
    ['a list', '[]'],
  ])('%s', (_, text) => {
    expect(runFile(text).map(({ passed }) => passed)).toEqual([false]);
  });
  test('a name that every object has', () => {
    const cases = [{ id: 'X-1', kind: 'toString', inputs: {}, expected: { a: 1 } }];
    expect(runFile(JSON.stringify({ cases })).map(({ passed }) => passed)).toEqual([false]);
  });
});

describe('comparing', () => {
  const agree = (expected: unknown, got: unknown, tolerance: Record<string, unknown> = {}) =>
    differences({ a: expected }, { a: got }, { a: tolerance }).length === 0;
  test.each([
    ['null with null', agree(null, null), true],
    ['null with nothing', differences({ a: null }, {}, {}).length === 0, false],
    ['null with a number', agree(null, 0), false],
    ['a number with null', agree(0, null), false],
    ['a number with NaN', agree(0, Number.NaN), false],
    ['within a millionth', agree(1, 1.0000009), true],
    ['past a millionth', agree(1, 1.0000022), false],
    ['within an absolute tolerance', agree(100, 101, { abs: 1 }), true],
    ['past an absolute tolerance', agree(100, 101.1, { abs: 1 }), false],
    ['within a relative tolerance', agree(100, 102, { rel: 0.02 }), true],
    ['past a relative tolerance', agree(100, 102.1, { rel: 0.02 }), false],
    ['exactly, and it is', agree(1, 1, { exact: true }), true],
    ['exactly, and it is not', agree(1, 1.0000001, { exact: true }), false],
    ['one instant in two offsets', agree('2026-05-08T16:00:00-05:00', '2026-05-08T21:00:00Z'), true],
    ['another instant', agree('2026-05-08T16:00:00-05:00', '2026-05-08T16:00:00Z'), false],
    ['the same list', agree(['a', 'b'], ['a', 'b']), true],
    ['another order', agree(['a', 'b'], ['b', 'a']), false],
    ['a longer list', agree(['a'], ['a', 'b']), false],
    ['members that the case does not list', differences({ a: 1 }, { a: 1, b: 2 }, {}).length === 0, true],
  ])('%s', (_, got, expected) => expect(got).toBe(expected));
});

describe('the list of disputed cases', () => {
  it('leaves out an id only with its reason', () => {
    expect(disputed('# Disputed\n- CO-01: the rule says otherwise\n- CO-02:\n- CO-03\nNone.\n')).toEqual([
      'CO-01',
    ]);
  });
  it('leaves out nothing else', () => {
    const [one, two] = all;
    const text = JSON.stringify({ cases: [one, two] });
    expect(runFile(text, new Set([one?.id ?? ''])).map(({ id }) => id)).toEqual([two?.id]);
  });
});
