import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { said } from '#app/server/said.ts';
import type { Problem } from '#shared/problem.ts';
import { messages } from '#shared/words/messages.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { routesOnFreshBook } from './kitchen.ts';
import { fromRequests, fromSchemas, fromSecrets, fromSigning } from './provoked-doors.ts';
import { fromEntries, type Provocation, placeFor } from './provoked-entries.ts';

/** Said by a phone that reaches no server: nothing that a server is sent can provoke them. */
const ofThePhone = ['no_network', 'no_answer'];

let book: FreshBook;
let provoked: Provocation[];

beforeAll(async () => {
  book = await routesOnFreshBook();
  const place = await placeFor(book.db);
  provoked = [
    ...fromSchemas(),
    ...(await fromRequests(place)),
    ...(await fromEntries(place)),
    ...(await fromSecrets(place)),
    ...(await fromSigning(place)),
  ];
});
afterAll(() => book.close());

const isWorded = (problem: Problem): boolean => {
  const [words] = said([problem], 'en');
  const [palabras] = said([problem], 'es');
  const texts = [words?.words.problem, words?.words.remedy, palabras?.words.problem, palabras?.words.remedy];
  return texts.every((text) => text !== undefined && !/^(problem|remedy)\.|[{}]/.test(text));
};

describe('every problem', () => {
  test('that an input provokes has words and a remedy in both languages', () => {
    for (const { did, problems } of provoked) {
      expect(problems, did).not.toEqual([]);
      for (const problem of problems) expect(isWorded(problem), `${did}: ${problem.problem}`).toBe(true);
    }
  });

  test('that has words is provoked by some input', () => {
    const seen = new Set(provoked.flatMap(({ problems }) => problems.map(({ problem }) => problem)));
    expect(
      Object.keys(messages.en.problem).filter((key) => !seen.has(key) && !ofThePhone.includes(key)),
    ).toEqual([]);
  });

  test('that is named in the code has words, and so has its remedy', () => {
    const calls =
      /\b(?:wrong|refused|refusal|problem|fault)\(\s*(?:\d{3}|'[^']*'|field),\s*'([a-z_]+)',\s*'([a-z_]+)'/g;
    const pairs = /problem: '([a-z_]+)',\s*remedy: '([a-z_]+)'/g;
    const named = ['app/server', 'app/api', 'app/client', 'db', 'lib/fold', 'shared'].flatMap((room) =>
      sources(room).flatMap((text) => [...text.matchAll(calls), ...text.matchAll(pairs)]),
    );
    expect(named.length).toBeGreaterThan(60);
    for (const [, problem = '', remedy = ''] of named) {
      expect(messages.en.problem).toHaveProperty(problem);
      expect(messages.en.remedy).toHaveProperty(remedy);
    }
  });
});

const sources = (room: string): string[] =>
  readdirSync(room, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(room, name), 'utf8'));

/** The end of a shut name depends on when this runs: it stands as 00:00 in the list. */
const withoutClock = (text: string): string => text.replace(/until \d\d:\d\d/g, 'until 00:00');

function listed({ did, problems }: Provocation): string {
  const lines = said(problems, 'en').map(
    ({ field, problem, words }) =>
      `- \`${problem}\`${field ? ` at \`${field}\`` : ''}: ${words.problem} *${words.remedy}*`,
  );
  return [`**${did[0]?.toUpperCase()}${did.slice(1)}**`, '', ...lines, ''].join('\n');
}

test('docs/messages.md lists every message beside the input that provokes it', async () => {
  const head = [
    '# What the book says when it does not take something',
    '',
    'Each input, the field that it is about, the problem and *the remedy*, in English; the Spanish words stand under',
    'the same keys in shared/words/es. Made by tests/api/messages.test.ts from the inputs themselves; after a change',
    'of words, `npx vitest run tests/api/messages.test.ts -u` writes it anew.',
    '',
    '',
  ].join('\n');
  const text = withoutClock(head + provoked.map(listed).join('\n'));
  await expect(text).toMatchFileSnapshot('../../docs/messages.md');
});
