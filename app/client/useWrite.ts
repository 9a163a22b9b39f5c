'use client'; // sends what was tapped and keeps it until it is in the book
import { useTranslations } from 'next-intl';
import { useRef, useState } from 'react';
import type { Draft } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import type { SaidProblem } from '#shared/receipt.ts';
import { postEntries } from './post-entries.ts';
import { draftsOf, type Written } from './written.ts';

/** A message by a key that only the answer knows. */
type Sentence = (key: string, values: Problem['values']) => string;
type Said = Problem & Partial<Pick<SaidProblem, 'words'>>;
/** Another hand than the one at the screen (a manager beside it), another moment than now. */
type Meant = { by?: string; at?: string };
type State = { busy: boolean; problems: Said[]; attempt: number };

/**
 * Writes what was chosen into the book. The same choice sent again keeps its ids, so an answer that was lost on
 * the way never writes twice. `write` yields the drafts that are in the book now, or null with `errors` set.
 */
export function useWrite(by: string) {
  const made = useRef(new Map<string, Draft>());
  const [state, setState] = useState<State>({ busy: false, problems: [], attempt: 0 });
  const problem = useTranslations('problem') as unknown as Sentence;
  const remedy = useTranslations('remedy') as unknown as Sentence;

  const draftOf = (written: Written, hand: { by: string; at?: string }): Draft => {
    const key = JSON.stringify([written, hand]);
    const known = made.current.get(key);
    if (known) return known;
    const [fresh] = draftsOf([written], hand);
    if (fresh === undefined) throw new Error('draftsOf: one written gives one draft');
    made.current.set(key, fresh);
    return fresh;
  };

  const write = async (written: readonly Written[], said: Meant = {}): Promise<Draft[] | null> => {
    setState((before) => ({ ...before, busy: true }));
    const drafts = written.map((one) => draftOf(one, { by, ...said }));
    const answer = await postEntries(drafts);
    const problems: Said[] =
      'problems' in answer ? answer.problems : answer.receipts.flatMap((receipt) => receipt.problems);
    setState(({ attempt }) => ({ busy: false, problems, attempt: attempt + 1 }));
    return problems.length === 0 ? drafts : null;
  };

  const wordsOf = (said: Said): string =>
    said.words
      ? `${said.words.problem} ${said.words.remedy}`
      : `${problem(said.problem, said.values)} ${remedy(said.remedy, said.values)}`;

  const errors = state.problems.map((said) => ({ words: wordsOf(said) }));
  return { write, busy: state.busy, problems: state.problems, errors, attempt: state.attempt };
}
