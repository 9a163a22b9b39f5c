import { createTranslator } from 'use-intl/core';
import type { Problem } from '#shared/problem.ts';
import type { SaidProblem } from '#shared/receipt.ts';
import { type Language, messages } from '#shared/words/messages.ts';

function line(
  language: Language,
  part: 'problem' | 'remedy',
  key: string,
  values: Problem['values'],
): string {
  const translator = createTranslator({
    locale: language,
    messages: messages[language] as Record<string, object>,
    namespace: part,
    timeZone: 'UTC',
    onError: () => {}, // a key without words answers with the key: the test of the catalogue finds it
  }) as unknown as (key: string, values: Problem['values']) => string;
  return translator(key, values);
}

/** The same problems with their words in `language`. */
export const said = (problems: readonly Problem[], language: Language): SaidProblem[] =>
  problems.map((each) => ({
    ...each,
    words: {
      problem: line(language, 'problem', each.problem, each.values),
      remedy: line(language, 'remedy', each.remedy, each.values),
    },
  }));
