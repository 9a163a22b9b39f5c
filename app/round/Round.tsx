'use client';
// A client island: our own keys, a figure that is kept while the network is away, no page between two looks.

import { useTranslations } from 'next-intl';
import { lazy, Suspense, useEffect, useState } from 'react';
import { useOutbox } from '#app/outbox/useOutbox.ts';
import { HandBand } from '#app/ui/HandBand.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Entry } from './Entry.tsx';
import type { RoundGiven } from './given.ts';
import css from './Round.module.css';
import { figuresOf } from './round-state.ts';
import { useKeyboard } from './useKeyboard.ts';
import { useRound } from './useRound.ts';
import { useWakeLock } from './useWakeLock.ts';

// What no first tap needs comes after the first paint, and is there before the network goes.
const loadAsides = () => import('./Aside.tsx');
const Aside = lazy(() => loadAsides().then((m) => ({ default: m.Aside })));
const loadNotSent = () => import('#app/outbox/NotSent.tsx');
const NotSent = lazy(() => loadNotSent().then((m) => ({ default: m.NotSent })));

/** One walk past all that is held: every look with its figure, in the order of the walk. */
export function Round({ given }: { given: RoundGiven }) {
  const t = useTranslations('round');
  const { state, act, bookAhead } = useRound({ ...given, undoReason: t('undo_reason') });
  const { now: outbox } = useOutbox(given.site);
  const now = useNow(given.now, bookAhead);
  const awake = useWakeLock();
  useKeyboard(state, act);
  useEffect(() => {
    void loadAsides();
    void loadNotSent();
  }, []);

  const hand = given.hands.find((h) => h.id === state.hand);
  const figures = figuresOf(state);
  const face = { state, act, given, now };
  return (
    <Sheet>
      <HandBand
        left={
          <Place
            {...figures}
            only={given.onlyOne}
            onWalk={() => act({ do: 'show', face: state.face.kind === 'walk' ? 'entry' : 'walk' })}
          />
        }
        hand={{ initials: hand?.initials ?? '?', name: hand?.name ?? t('choose_hand') }}
        onChange={() => act({ do: 'show', face: 'hands' })}
      />
      {outbox.fault !== null || outbox.held.some((h) => h.refused) ? (
        <Suspense fallback={null}>
          <NotSent site={given.site} zone={given.zone} clock={given.clock} />
        </Suspense>
      ) : null}
      {state.face.kind === 'entry' ? (
        <Entry {...face} held={outbox.held} awake={awake} />
      ) : (
        <Suspense fallback={null}>
          <Aside {...face} />
        </Suspense>
      )}
    </Sheet>
  );
}

function Place(props: { done: number; total: number; only: boolean; onWalk: () => void }) {
  const t = useTranslations('round');
  return (
    <button type="button" onClick={props.onWalk} className={css.walk}>
      <b>{t('title')}</b>
      <small>{t('progress', { done: props.done, total: props.total })}</small>
    </button>
  );
}

/** The book's clock on this phone: as the server said at first (the same on both sides), then running. */
function useNow(atFirst: number, bookAhead: { current: number }): number {
  const [now, setNow] = useState(atFirst);
  useEffect(() => {
    const tick = (): void => setNow(Date.now() + bookAhead.current);
    tick();
    const timer = setInterval(tick, 5_000);
    return () => clearInterval(timer);
  }, [bookAhead]);
  return now;
}
