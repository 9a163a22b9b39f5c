import Dexie, { type Table } from 'dexie';
import type { Entry } from '#shared/entries/entry.ts';
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

const countKey = (site: string): string => `holdproof.held.${site}`;

/** The number that outlives an emptied store; a worker has no such place, and then nothing is expected. */
const counts = (): Storage | null => {
  try {
    return typeof localStorage === 'undefined' ? null : localStorage;
  } catch {
    return null;
  }
};

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
  const count = async (): Promise<void> => {
    try {
      counts()?.setItem(countKey(site), String(await out.where('site').equals(site).count()));
    } catch {
      // a full store of small values: an emptied database is then not noticed, and nothing else changes
    }
  };
  return {
    all: async () => {
      const rows = await out.where('site').equals(site).sortBy('id');
      return rows.map(({ held }) => held);
    },
    put: async (held) => {
      await out.bulkPut(held.map((one) => ({ id: one.draft.id, site, held: one })));
      await count();
      outboxChanged(site);
    },
    remove: async (ids) => {
      if (ids.length === 0) return;
      await out.bulkDelete([...ids]);
      await count();
      outboxChanged(site);
    },
    expected: () => Number(counts()?.getItem(countKey(site)) ?? 0),
  };
}
