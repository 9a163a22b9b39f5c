import { useTranslations } from 'next-intl';
import type { Problem } from '#shared/problem.ts';
import type { SaidProblem } from '#shared/receipt.ts';

/** A message by a key that only the problem knows. */
type Sentence = (key: string, values: Problem['values']) => string;

/** A problem in one line: what was found, then what to do. The server's own words where it has said them. */
export function useProblemWords(): (problem: Problem & { words?: SaidProblem['words'] }) => string {
  const problem = useTranslations('problem') as unknown as Sentence;
  const remedy = useTranslations('remedy') as unknown as Sentence;
  return (found) =>
    found.words
      ? `${found.words.problem} ${found.words.remedy}`
      : `${problem(found.problem, found.values)} ${remedy(found.remedy, found.values)}`;
}
