import { useEffect, useState, useSyncExternalStore } from 'react';
import { alone } from './alone.ts';
import { type Outbox, type OutboxNow, openOutbox } from './outbox.ts';

const open = new Map<string, Outbox>();

/** The one outbox of this page for a site. Its store and the way to the book are loaded after the first paint. */
export function outboxOf(site: string): Outbox {
  const known = open.get(site);
  if (known) return known;
  const made = openOutbox({
    store: async () => (await import('./phone-store.ts')).heldStore(site),
    post: async (drafts, spoken) => (await import('#app/client/post-entries.ts')).postEntries(drafts, spoken),
    later: (run, ms) => void setTimeout(run, ms),
    alone,
  });
  made.subscribe(() => {
    if (made.now().fault !== null) void callMeBack();
  });
  open.set(site, made);
  return made;
}

/** The browser may call the phone's worker when the network is back, also after this page is closed. */
const callMeBack = async (): Promise<void> => (await import('#app/client/keep-ready.ts')).callMeBack();

const nothing: OutboxNow = { held: [], fault: null, durable: true, lost: 0, posting: false };
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
    const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('holdproof.out');
    channel?.addEventListener('message', ({ data }) => data === site && void here.reread());
    window.addEventListener('online', send);
    return () => {
      channel?.close();
      window.removeEventListener('online', send);
    };
  }, [site]);
  const now = useSyncExternalStore(outbox?.subscribe ?? never, outbox?.now ?? (() => nothing), () => nothing);
  return { now, outbox };
}
