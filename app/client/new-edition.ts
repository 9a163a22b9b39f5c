import { useEffect, useState } from 'react';
import { type Taken, takeWord } from './worker-words.ts';

/** The worker of a newer edition that waits on this phone to be taken; null = there is none. */
export function useNewEdition(): ServiceWorker | null {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  useEffect(() => {
    if (!('serviceWorker' in navigator)) return;
    let left = false;
    let stop = (): void => {};
    void navigator.serviceWorker.ready.then((registration) => {
      if (left) return;
      const look = (): void => setWaiting(registration.waiting);
      const found = (): void => registration.installing?.addEventListener('statechange', look);
      look();
      found();
      registration.addEventListener('updatefound', found);
      stop = () => registration.removeEventListener('updatefound', found);
    });
    return () => {
      left = true;
      stop();
    };
  }, []);
  return waiting;
}

/** Asks the waiting edition to take over, and opens this page anew once it has. */
export async function takeEdition(waiting: ServiceWorker): Promise<Taken> {
  const { port1, port2 } = new MessageChannel();
  const anew = (): void => window.location.reload();
  navigator.serviceWorker.addEventListener('controllerchange', anew, { once: true });
  const answer = new Promise<Taken>((done) => {
    port1.onmessage = ({ data }) => done(data === 'round' ? 'round' : 'taken');
  });
  waiting.postMessage(takeWord, [port2]);
  const taken = await answer;
  // Another page may let it in later, when something is being typed on this one.
  if (taken === 'round') navigator.serviceWorker.removeEventListener('controllerchange', anew);
  return taken;
}
