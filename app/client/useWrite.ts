'use client'; // sends what was tapped and keeps it until it is in the book
import { useRef, useState } from 'react';
import { writeAndWait } from '#app/outbox/when-sent.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { useSite } from './InSite.tsx';
import { draftsOf, type Written } from './written.ts';

/** Another hand than the one at the screen (a manager beside it), another moment than now. */
type Meant = { by?: string; at?: string };
type State = { busy: boolean; errors: { words: string }[]; attempt: number };

/**
 * Writes what was chosen: first into this phone's store, then into the book. `write` yields the drafts that are
 * in the book or safe on this phone (no network), or null with `errors` set when the book refused them: then
 * nothing is kept but what stands in the form. The same choice sent again keeps its ids, so an answer that was
 * lost on the way never writes twice.
 */
export function useWrite(by: string) {
  const site = useSite();
  const made = useRef(new Map<string, Draft>());
  const [state, setState] = useState<State>({ busy: false, errors: [], attempt: 0 });

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
    const refusals = await writeAndWait(site, drafts);
    const errors = refusals.map(({ problem, remedy }) => ({ words: `${problem} ${remedy}` }));
    setState(({ attempt }) => ({ busy: false, errors, attempt: attempt + 1 }));
    return errors.length === 0 ? drafts : null;
  };

  return { write, busy: state.busy, errors: state.errors, attempt: state.attempt };
}
