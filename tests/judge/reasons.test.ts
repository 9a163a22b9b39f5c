import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { type Reason, reasonKeys } from '#lib/judge/answer.ts';
import { messages } from '#shared/words/messages.ts';

/** Reasons of rules that are not built yet: cold holding is the mirror of hot holding. */
const notBuiltYet: readonly Reason[] = ['coldest_only'];
/** Said of a step without a rule, by the log: tests/judge/log.test.ts. */
const ofNoStage: readonly Reason[] = ['preparation'];

const cases = ['20-limits.json', '21-more-limits-built.json'].flatMap((name): unknown[] => {
  return JSON.parse(readFileSync(new URL(`../reference/${name}`, import.meta.url), 'utf8')).cases;
});
const said = JSON.stringify(cases.map((one) => (one as { expected: unknown }).expected));

describe('every reason key', () => {
  test.each(reasonKeys)('%s is given by some outside case, or its rule is not built', (reason) => {
    const built = ![...notBuiltYet, ...ofNoStage].includes(reason);
    expect(said.includes(`"${reason}"`)).toBe(built);
  });
  it.each(['en', 'es'] as const)('has its words in %s', (language) => {
    expect(Object.keys(messages[language].judge.reason).sort()).toEqual([...reasonKeys].sort());
  });
});
