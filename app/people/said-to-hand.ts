import type { ClientProblem } from '#app/client/post-entries.ts';

/** What went wrong in words: the server's, or our own when it could not be asked. */
export function saidToHand(
  problem: ClientProblem,
  t: (key: 'fault.no_network' | 'fault.no_answer') => string,
): string {
  if (problem.words) return `${problem.words.problem} ${problem.words.remedy}`;
  return t(problem.problem === 'no_answer' ? 'fault.no_answer' : 'fault.no_network');
}
