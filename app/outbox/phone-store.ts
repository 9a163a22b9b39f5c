import Dexie, { type Table } from 'dexie';
import type { Entry } from '#shared/entries/entry.ts';
import { heldLast, noteHeld } from './held-count.ts';
import type { Held, HeldStore } from './outbox.ts';

type KeptHeld = { id: string; site: string; held: Held };

/** The book as this phone last had it: what is open, the set-up and the last days (see app/api/book). */
export type PhoneBook = {
  site: string;
  takenAt: number; // ms, by this phone's clock
  edition?: string; // as the server names it, so that it is not sent again while nothing was written
  bookAhead: number; // ms that the book's clock was ahead of this phone's
  entries: Entry[];
  hand: string | null;
  hands: string[]; // signed in by a secret on this phone
  lang: 'en' | 'es';
};

/** What this phone keeps. Writes settle when they are on its disk, not when they are in its memory. */
class PhoneStore extends Dexie {
  readonly out!: Table<KeptHeld, string>;
  readonly book!: Table<PhoneBook, string>;

  constructor() {
    super('holdproof', { chromeTransactionDurability: 'strict' });
    this.version(1).stores({ out: 'id, site', book: 'site' });
  }
}

let opened: PhoneStore | null = null;

/** The phone's database. A browser drops its connection after a sleep: it is opened again when it is asked for. */
export function phoneStore(): PhoneStore {
  opened ??= new PhoneStore();
  return opened;
}

/** Tells the other pages of this phone that what it holds for a site changed. */
export function outboxChanged(site: string): void {
  if (typeof BroadcastChannel === 'undefined') return;
  const channel = new BroadcastChannel('holdproof.out');
  channel.postMessage(site);
  channel.close();
}

/** Entries of one site that are not in the book yet, in IndexedDB. */
export function heldStore(site: string): HeldStore {
  const { out } = phoneStore();
  const countNow = (): Promise<number> => out.where('site').equals(site).count();
  return {
    all: async () => {
      const rows = await out.where('site').equals(site).sortBy('id');
      return rows.map(({ held }) => held);
    },
    put: async (held) => {
      await out.bulkPut(held.map((one) => ({ id: one.draft.id, site, held: one })));
      await noteHeld(site, await countNow());
      outboxChanged(site);
    },
    remove: async (ids) => {
      if (ids.length === 0) return;
      await noteHeld(site, Math.max(0, (await countNow()) - ids.length)); // before they go: nobody is to miss them
      await out.bulkDelete([...ids]);
      await noteHeld(site, await countNow());
      outboxChanged(site);
    },
    expected: () => heldLast(site),
  };
}
