import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import { v7 } from 'uuid';
import { outboxOf } from '#app/outbox/useOutbox.ts';
import { keepProbe, keepTyped, keptProbe, keptTyped, withHeld } from './kept-here.ts';
import { keyOf, opened, type RoundPlanned, type RoundState } from './round-state.ts';
import { type Around, type Press, pressed } from './round-step.ts';

type Given = {
  site: string;
  planned: RoundPlanned;
  hand: string | null;
  lang: 'en' | 'es';
  undoReason: string;
};

/** The round on this phone: its state, and what each press does to it, to the phone's store and to the book. */
export function useRound({ site, planned, hand, lang, undoReason }: Given) {
  const [state, setState] = useState<RoundState>(() => opened(planned, hand, null));
  const latest = useRef(state);
  const bookAhead = useRef(0);
  const router = useRouter();

  const show = useCallback((next: RoundState): void => {
    latest.current = next;
    setState(next);
  }, []);

  // Once, after the first paint: what this phone kept, and how far its clock is from the book's.
  const first = useRef({ planned, hand });
  useEffect(() => {
    const { planned: plan, hand: whose } = first.current;
    void aheadOfMe().then((ahead) => {
      if (ahead !== null) bookAhead.current = ahead;
    });
    const held = outboxOf(site)
      .now()
      .held.map((h) => h.draft);
    const next = opened(withHeld(plan, held), whose, keptProbe(site));
    const kept = keptTyped(site);
    const index = next.looks.findIndex((look) => keyOf(look) === kept?.key);
    show(kept === null || index === -1 ? next : { ...next, typed: kept.typed, current: index });
  }, [site, show]);

  const act = useCallback(
    (what: Press): void => {
      const outbox = outboxOf(site);
      const around: Around = {
        now: Date.now(),
        bookAhead: bookAhead.current,
        id: v7,
        unsent: outbox.unsent,
        lang,
        undoReason,
      };
      const { state: next, write, drop } = pressed(latest.current, what, around);
      for (const id of drop) outbox.drop(id);
      if (write.length > 0) outbox.write(write);
      if (what.do === 'probe') keepProbe(site, what.probe);
      if (what.do === 'hand') void sayHand(what.person).then((said) => said && router.refresh());
      if (next.round !== null && next.round !== latest.current.round) nameRound(next.round);
      show(next);
      keepTyped(site, next);
    },
    [site, lang, undoReason, show, router],
  );

  return { state, act, bookAhead };
}

/** How far the book's clock is ahead of this device's, ms: half of the way there and back is taken off. null = no answer. */
async function aheadOfMe(): Promise<number | null> {
  try {
    const asked = Date.now();
    const answer = (await (await fetch('/round/clock', { cache: 'no-store' })).json()) as { now: number };
    return answer.now - (asked + Date.now()) / 2;
  } catch {
    return null; // no network: the entry carries the device's time, and the book notes when it came
  }
}

/** Tells the server whose hand writes on this device, so that the next page is in that person's language. */
async function sayHand(person: string): Promise<boolean> {
  try {
    const { post } = await import('#app/client/post-entries.ts');
    return !('problems' in (await post('/api/hand', { person })));
  } catch {
    return false; // no network: each entry names its hand anyway
  }
}

/** The address names the round, so that a reload goes on with it. */
function nameRound(round: string): void {
  const here = new URL(window.location.href);
  here.searchParams.set('round', round);
  window.history.replaceState(window.history.state, '', here);
}
