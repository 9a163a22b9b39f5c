import { postEntries } from '#app/client/post-entries.ts';
import { alone } from './alone.ts';
import { openOutbox } from './outbox.ts';
import { heldStore, phoneStore } from './phone-store.ts';

/** Sends what is on this phone, for every kitchen, while no page of it is open. @throws Error so that the browser calls again */
export async function sendFromWorker(): Promise<void> {
  const sites = (await phoneStore().out.orderBy('site').uniqueKeys()).map(String);
  for (const site of sites) {
    const outbox = openOutbox({
      store: async () => heldStore(site),
      post: postEntries,
      later: () => {}, // the browser says when
      alone,
    });
    await outbox.send();
    if (outbox.now().fault !== null) throw new Error('sendFromWorker: no answer from the book');
  }
}
