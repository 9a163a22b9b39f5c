import type { Problem } from '#shared/problem.ts';
import { messages } from '#shared/words/messages.ts';

const at = (texts: Record<string, unknown>, key: string): string => {
  const text = texts[key];
  return typeof text === 'string' ? text : '';
};

/** Problem and remedy in both languages; '' where the catalogue has none. */
export const problemWords = ({ problem, remedy }: Problem): string[] =>
  (['en', 'es'] as const).flatMap((language) => [
    at(messages[language].problem, problem),
    at(messages[language].remedy, remedy),
  ]);

/** What is odd, in both languages. */
export const oddWords = (key: string): string[] =>
  (['en', 'es'] as const).map((language) => at(messages[language].odd, key));
