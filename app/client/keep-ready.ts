import { takeBook } from './take-book.ts';
import { claimWord } from './worker-words.ts';

const everyMs = 60_000;
const editionEveryMs = 30 * 60_000; // a page may stay open for days, and only a visit asks by itself
let started = false;

/** Registers the worker, asks for a lasting store once there is something to keep, and keeps the book at hand. */
export async function keepReady(): Promise<void> {
  if (started) return;
  started = true;
  await tend();
  setInterval(() => void tend(), everyMs);
  addEventListener('online', () => void tend());
  setInterval(() => void lookForEdition(), editionEveryMs);
}

async function tend(): Promise<void> {
  if ('serviceWorker' in navigator) await comeUnder();
  if (document.visibilityState !== 'visible') return;
  const taken = await takeBook();
  if (taken !== null && taken !== 'revoked') await navigator.storage?.persist?.();
}

/**
 * Brings the page under the worker. An installation that broke off for want of one file leaves nothing behind and is
 * begun again; one that stands is left as it is. A page that was asked for before the worker was at work and came
 * after it took the open pages over has none, and neither has one that was loaded anew by force: without the network
 * it would miss the files that it has not used yet.
 */
async function comeUnder(): Promise<void> {
  const worker = await navigator.serviceWorker.register('/serwist/sw.js', { scope: '/' }).catch(() => null);
  if (worker === null || navigator.serviceWorker.controller !== null) return;
  void navigator.serviceWorker.ready.then(({ active }) => {
    if (navigator.serviceWorker.controller === null) active?.postMessage(claimWord);
  });
}

async function lookForEdition(): Promise<void> {
  const worker = await navigator.serviceWorker?.getRegistration();
  await worker?.update().catch(() => {}); // no network: asked again with the next turn
}

/** Asks the browser to call the worker when the network is back, where it knows how. */
export async function callMeBack(): Promise<void> {
  const worker = await navigator.serviceWorker?.ready;
  const sync = (worker as unknown as { sync?: { register: (tag: string) => Promise<void> } } | undefined)
    ?.sync;
  await sync?.register('holdproof.out').catch(() => {});
}
