import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { allAnswers, answersIn } from '../bin/demands.ts';
import demands from '../docs/record-demands.json' with { type: 'json' };

describe('the demands on a record book', () => {
  test('are numbered from 1 to 70, and each says where it comes from', () => {
    expect(demands.map(({ number }) => number)).toEqual(Array.from({ length: 70 }, (_, i) => i + 1));
    expect(demands.filter(({ source }) => source === '')).toEqual([]);
  });

  test('are answered by the names of tests, and by nothing else in a file', () => {
    const text = `// demand:1\ntest('one (demand:2 demand:3)', () => {});\ndescribe("two [demand:4]", () => {});`;
    expect(answersIn('a.test.ts', text)).toEqual([
      { demand: 2, file: 'a.test.ts', name: 'one' },
      { demand: 3, file: 'a.test.ts', name: 'one' },
      { demand: 4, file: 'a.test.ts', name: 'two' },
    ]);
  });

  test('are the only numbers that a test may carry, and the documents that answer one are there', () => {
    const numbers = new Set(demands.map(({ number }) => number));
    expect(allAnswers().filter((one) => !numbers.has(one.demand))).toEqual([]);
    expect(demands.flatMap(({ documents }) => documents).filter((path) => !existsSync(path))).toEqual([]);
  });
});
