import { takeBook } from './take-book.ts';

const everyMs = 60_000;
const editionEveryMs = 30 * 60_000; // a page may stay open for days, and only a visit asks by itself
let started = false;

/** Registers the worker, asks for a lasting store once there is something to keep, and keeps the book at hand. */
export async function keepReady(): Promise<void> {
  if (started) return;
  started = true;
  if ('serviceWorker' in navigator) {
    const worker = await navigator.serviceWorker.register('/serwist/sw.js', { scope: '/' }).catch(() => null);
    setInterval(() => void worker?.update().catch(() => {}), editionEveryMs);
  }
  const take = async (): Promise<void> => {
    if (document.visibilityState !== 'visible') return;
    const taken = await takeBook();
    if (taken !== null && taken !== 'revoked') await navigator.storage?.persist?.();
  };
  await take();
  setInterval(() => void take(), everyMs);
}

/** Asks the browser to call the worker when the network is back, where it knows how. */
export async function callMeBack(): Promise<void> {
  const worker = await navigator.serviceWorker?.ready;
  const sync = (worker as unknown as { sync?: { register: (tag: string) => Promise<void> } } | undefined)
    ?.sync;
  await sync?.register('holdproof.out').catch(() => {});
}
