import { useEffect, useRef } from 'react';
import { type RoundState, spotsSaved } from './round-state.ts';
import type { Press } from './round-step.ts';
import { padKeyOf } from './typing.ts';

/** Digits, point, minus, Backspace; Enter = the first save key, Shift+Enter = the second. Escape leaves an aside. */
export function useKeyboard(state: RoundState, act: (what: Press) => void): void {
  const latest = useRef({ state, act });
  latest.current = { state, act };
  useEffect(() => {
    const down = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return;
      const press = pressOf(event, latest.current.state);
      if (press === null) return;
      event.preventDefault();
      latest.current.act(press);
    };
    window.addEventListener('keydown', down);
    return () => window.removeEventListener('keydown', down);
  }, []);
}

/** The save key that Enter means: one that is saved already cannot be pressed again, so the next one is meant. */
export function saveOf(state: RoundState, second: boolean): Press | null {
  const look = state.looks[state.current];
  if (look === undefined) return null;
  const saved = spotsSaved(state, look);
  const free = look.spots.filter((spot) => !saved.includes(spot));
  const spot = second ? free.find((each) => each !== look.spots[0]) : free[0];
  return spot === undefined ? null : { do: 'save', spot };
}

function pressOf(event: KeyboardEvent, state: RoundState): Press | null {
  if (event.key === 'Escape' && state.face.kind !== 'stop' && state.face.kind !== 'summary')
    return { do: 'show', face: 'entry' };
  if (state.face.kind !== 'entry') return null;
  if (event.key === 'Enter') {
    // A key that was reached with Tab is pressed by its own Enter.
    if (event.target instanceof HTMLElement && event.target.closest('button, a')) return null;
    return saveOf(state, event.shiftKey);
  }
  const key = padKeyOf(event.key);
  return key === null ? null : { do: 'key', key };
}
