import { outboxChanged, type PhoneBook, phoneStore } from '#app/outbox/phone-store.ts';
import type { Problem } from '#shared/problem.ts';
import { patienceMs } from './post-entries.ts';

type Answer = Omit<PhoneBook, 'takenAt' | 'bookAhead' | 'edition'>;

/** The kitchen of now; null = nothing answered; revoked = the kitchen no longer knows this device. */
export type Taken = PhoneBook | 'revoked' | null;

/**
 * The kitchen of now into this phone's store; what was there stays when nothing answers. A book that did not
 * change since is not sent again. A device that was put out loses the book and keeps what is not sent.
 */
export async function takeBook(): Promise<Taken> {
  const asked = Date.now();
  try {
    const before = await lastBook();
    const headers = {
      'device-clock': String(Date.now()), // by which the book knows how far this clock is off
      ...(before?.edition === undefined ? {} : { 'if-none-match': before.edition }),
    };
    const response = await fetch('/api/book', {
      cache: 'no-store',
      headers,
      signal: AbortSignal.timeout(patienceMs),
    });
    if (response.status === 401 && (await namesUnknown(response))) return await putOut();
    const same = response.status === 304 && before !== null;
    if (!same && !response.ok) return null;
    const answer = same ? before : ((await response.json()) as Answer);
    const takenAt = Date.now();
    const clock = Number(response.headers.get('book-clock'));
    const bookAhead = clock - (asked + takenAt) / 2;
    const edition = response.headers.get('etag');
    const book: PhoneBook = { ...answer, takenAt, bookAhead, ...(edition === null ? {} : { edition }) };
    await phoneStore().book.put(book);
    return book;
  } catch {
    return null; // no network, or no store: the page that is open goes on
  }
}

/** The book as this phone last had it; null = it never had one, or its store is shut. */
export async function lastBook(): Promise<PhoneBook | null> {
  try {
    const all = await phoneStore().book.toArray();
    return all.sort((a, b) => b.takenAt - a.takenAt)[0] ?? null;
  } catch {
    return null;
  }
}

async function namesUnknown(response: Response): Promise<boolean> {
  const { problems = [] } = (await response.json()) as { problems?: Problem[] };
  return problems.some(({ problem }) => problem === 'device_unknown');
}

/** The kitchen's knowledge leaves this phone. What was written on it stays, for its writer or a lead to stand for. */
async function putOut(): Promise<'revoked'> {
  const store = phoneStore();
  await store.transaction('rw', store.book, store.out, async () => {
    await store.book.clear();
    await store.out.toCollection().modify((row) => {
      row.held.waited = true;
    });
  });
  for (const site of await store.out.orderBy('site').uniqueKeys()) outboxChanged(String(site));
  return 'revoked';
}
