import type { PhoneBook } from '#app/outbox/phone-store.ts';
import { phoneStore } from '#app/outbox/phone-store.ts';

const everyMs = 60_000;
const editionEveryMs = 30 * 60_000; // a page may stay open for days, and only a visit asks by itself
let started = false;

type Answer = Omit<PhoneBook, 'takenAt' | 'bookAhead'> & { now: number };

/** The kitchen of now into this phone's store; what was there stays when nothing answers. */
export async function takeBook(): Promise<PhoneBook | null> {
  const asked = Date.now();
  try {
    const response = await fetch('/api/book', { cache: 'no-store' });
    if (!response.ok) return null;
    const { now, ...rest } = (await response.json()) as Answer;
    const takenAt = Date.now();
    const book: PhoneBook = { ...rest, takenAt, bookAhead: now - (asked + takenAt) / 2 };
    await phoneStore().book.put(book);
    return book;
  } catch {
    return null; // no network, or no store: the page that is open goes on
  }
}

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
    if ((await takeBook()) !== null) await navigator.storage?.persist?.();
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
