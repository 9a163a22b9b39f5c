import { useEffect, useState, useSyncExternalStore } from 'react';
import { type Outbox, type OutboxNow, openOutbox } from './outbox.ts';

const open = new Map<string, Outbox>();

/** The browser's store, or null where it is shut (private windows, a policy): then only this page holds the entries. */
function storeOf(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

/** The one outbox of this page for a site. The way to the book is loaded after the first paint. */
export function outboxOf(site: string): Outbox {
  const known = open.get(site);
  if (known) return known;
  const made = openOutbox(site, {
    store: storeOf(),
    post: async (drafts, sure) => (await import('#app/client/post-entries.ts')).postEntries(drafts, sure),
    later: (run, ms) => void setTimeout(run, ms),
  });
  open.set(site, made);
  return made;
}

const nothing: OutboxNow = { held: [], fault: null, durable: true, posting: false };
const never = (): (() => void) => () => {};

/** What is on this phone and not in the book yet. It sends when the page opens and when the network comes back. */
export function useOutbox(site: string): { now: OutboxNow; outbox: Outbox | null } {
  const [outbox, setOutbox] = useState<Outbox | null>(null);
  useEffect(() => {
    const here = outboxOf(site);
    setOutbox(here);
    const send = (): void => void here.send();
    send();
    void import('#app/client/post-entries.ts').catch(() => {}); // here before the network goes
    window.addEventListener('online', send);
    return () => window.removeEventListener('online', send);
  }, [site]);
  const now = useSyncExternalStore(outbox?.subscribe ?? never, outbox?.now ?? (() => nothing), () => nothing);
  return { now, outbox };
}
