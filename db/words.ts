import { createTranslator } from 'use-intl/core';
import { type Language, messages } from '#shared/words/messages.ts';
import type { BookRefused } from './refused.ts';
import type { Say } from './say.ts';

const words = (language: Language) =>
  createTranslator({ locale: language, messages: messages[language], namespace: 'database' });

/** What opening the book says, as lines of words for `print`. */
export function openingWords(language: Language, print: (line: string) => void): Say {
  const t = words(language);
  return (key, values) => print(t(`say.${key}`, values as never));
}

/** A refusal in two lines: the problem, then the remedy. */
export function refusalWords(language: Language, { key, values }: BookRefused): [string, string] {
  const t = words(language);
  return [t(`refused.${key}.problem`, values as never), t(`refused.${key}.remedy`, values as never)];
}
