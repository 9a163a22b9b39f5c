import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import demands from '../docs/record-demands.json' with { type: 'json' };
import { say } from './say.ts';

/**
 * `npm run demands`: which of the 70 demands on a record book are answered, by which test or document. A test
 * answers a demand by its number in its name, `demand:16`; a document by its path in docs/record-demands.json.
 */
const root = dirname(dirname(fileURLToPath(import.meta.url)));

type Answer = { demand: number; file: string; name: string };

/** The first argument of `test`, `it` or `describe`, also behind `.each(…)`: a string that holds a tag. */
const taggedName = /(['"`])((?:(?!\1)[^\n])*\bdemand:\d+(?:(?!\1)[^\n])*)\1/g;

export const answersIn = (file: string, text: string): Answer[] =>
  [...text.matchAll(taggedName)].flatMap(([, , name = '']) =>
    [...name.matchAll(/\bdemand:(\d+)/g)].map(([, number]) => ({
      demand: Number(number),
      file,
      name: name.replaceAll(/\s*[([]?\bdemand:\d+[)\]]?/g, '').trim(),
    })),
  );

export const allAnswers = (): Answer[] =>
  globSync('tests/**/*.test.{ts,tsx}', { cwd: root })
    .filter((file) => file !== join('tests', 'demands.test.ts'))
    .sort()
    .flatMap((file) => answersIn(file, readFileSync(join(root, file), 'utf8')));

const linesOf = ({ number, documents }: (typeof demands)[number], answers: readonly Answer[]): string[] => [
  ...answers.filter((one) => one.demand === number).map(({ file, name }) => `      ${file}: ${name}`),
  ...documents.filter((path) => existsSync(join(root, path))).map((path) => `      ${path}`),
];

function main(): void {
  const answers = allAnswers();
  const told = demands.map((one) => ({ one, lines: linesOf(one, answers) }));
  for (const [group, all] of Map.groupBy(told, ({ one }) => one.group)) {
    process.stdout.write(`\n${group}\n`);
    for (const { one, lines } of all) {
      const mark = lines.length > 0 ? 'met    ' : 'not met';
      process.stdout.write(`  ${mark}  ${one.number}. ${one.demand} [${one.source}]\n`);
      for (const line of lines) process.stdout.write(`${line}\n`);
    }
  }
  const met = told.filter(({ lines }) => lines.length > 0).length;
  say(`\n${met} of ${demands.length} are met by a test or a document; ${demands.length - met} are not.`);
}

if (import.meta.main) main();
