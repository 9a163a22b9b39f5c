'use client'; // sends to the book
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { type ClientProblem, postEntries } from '#app/client/post-entries.ts';
import type { Draft } from '#shared/entries/entry.ts';

/**
 * Sends entries that belong together and goes on when all are in the book. The same words sent again keep their ids:
 * what was taken before an answer was lost is not written twice.
 * @param was the entries from which the form was shown: what another hand changed since is not written over
 * @returns `send(of, make)`: `of` = the words that are meant; answers the problems, [] = all taken
 */
export function useDrafts(after: string, was: readonly string[]) {
  const router = useRouter();
  const made = useRef<{ of: string; drafts: Draft[] } | null>(null);
  const [busy, setBusy] = useState(false);
  const send = async (of: string, make: () => Draft[]): Promise<readonly ClientProblem[]> => {
    if (made.current?.of !== of) made.current = { of, drafts: make() };
    setBusy(true);
    const answer = await postEntries(made.current.drafts, { was });
    setBusy(false);
    // The first refusal is the cause; what followed it fails for it (a kitchen cannot choose limits that were refused).
    const problems =
      'problems' in answer
        ? answer.problems
        : (answer.receipts.find((one) => one.problems.length > 0)?.problems ?? []);
    if (problems.some(({ problem }) => problem === 'changed_meanwhile')) {
      made.current = null; // sent again it stands on what is in the book by then
      router.refresh();
    }
    if (problems.length > 0) return problems;
    made.current = null;
    router.push(after);
    router.refresh();
    return [];
  };
  return { send, busy };
}
