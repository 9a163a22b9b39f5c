/// <reference lib="webworker" />
import { type PrecacheEntry, Serwist, type SerwistPlugin } from 'serwist';
import { claimWord, type Taken, takeWord } from './client/worker-words.ts';
import { sendFromWorker } from './outbox/send-from-worker.ts';

declare const self: ServiceWorkerGlobalScope & { __SW_MANIFEST: (PrecacheEntry | string)[] | undefined };

const answerWithinMs = 4_000; // longer than a page takes on a bad evening, shorter than a cook's patience

/** The server's page, or null when nothing came in time, or only a word that it is away. */
async function page(request: Request): Promise<Response | null> {
  const late = new Promise<null>((done) => setTimeout(() => done(null), answerWithinMs));
  const answer = await Promise.race([fetch(request).catch(() => null), late]);
  return answer === null || [502, 503, 504].includes(answer.status) ? null : answer;
}

/**
 * Gives an installation up as soon as one of its files did not come, so that the page can begin another. Left alone
 * the library waits for that file until the browser puts an end to it, some minutes later.
 */
const wholeOrNothing: SerwistPlugin = {
  handlerDidError: async ({ event, error }) => {
    if (event.type !== 'install') return undefined;
    event.waitUntil(Promise.reject(error ?? new Error('a file did not come')));
    return new Response(); // kept nowhere: an answer that lets the library come to its end
  },
};

const serwist = new Serwist({
  precacheEntries: self.__SW_MANIFEST ?? [],
  precacheOptions: { plugins: [wholeOrNothing] },
  skipWaiting: false, // a new edition waits until somebody at the phone takes it: no round is broken off
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request, sameOrigin }) => sameOrigin && request.mode === 'navigate',
      handler: async ({ request }) =>
        (await page(request)) ?? (await serwist.matchPrecache('/away')) ?? Response.error(),
    },
  ],
});

serwist.addEventListeners();

// The browser calls when the network is back, also with no page open (where it knows how).
self.addEventListener('sync', (event) => {
  if (event.tag === 'holdproof.out') event.waitUntil(sendFromWorker());
});

/** A round that is open on this phone goes on with the files it began with: the new edition waits for its end. */
async function take(): Promise<Taken> {
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (pages.some(({ url }) => /^\/round(\/|$)/.test(new URL(url).pathname))) return 'round';
  await self.skipWaiting();
  return 'taken';
}

self.addEventListener('message', (event) => {
  if (event.data === claimWord) event.waitUntil(self.clients.claim());
  if (event.data !== takeWord) return;
  event.waitUntil(take().then((answer) => event.ports[0]?.postMessage(answer)));
});
