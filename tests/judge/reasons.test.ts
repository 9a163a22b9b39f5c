import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { type Reason, reasonKeys } from '#lib/judge/answer.ts';
import { messages } from '#shared/words/messages.ts';

/** Said of a step without a rule, by the log: tests/judge/log.test.ts. */
const ofNoStage: readonly Reason[] = ['preparation'];

const cases = ['20-limits.json', '21-more-limits.json'].flatMap((name): unknown[] => {
  return JSON.parse(readFileSync(new URL(`../reference/${name}`, import.meta.url), 'utf8')).cases;
});
const said = JSON.stringify(cases.map((one) => (one as { expected: unknown }).expected));

describe('every reason key', () => {
  test.each(reasonKeys)('%s is given by some outside case, or is of no stage', (reason) => {
    expect(said.includes(`"${reason}"`)).toBe(!ofNoStage.includes(reason));
  });
  it.each(['en', 'es'] as const)('has its words in %s', (language) => {
    expect(Object.keys(messages[language].judge.reason).sort()).toEqual([...reasonKeys].sort());
  });
});
