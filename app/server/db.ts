import 'server-only';
import { type Db, openBook } from '#db/connect.ts';

/** One book a process, kept where a reloaded module finds it again. */
const kept = globalThis as typeof globalThis & { holdproofBook?: Promise<Db> | undefined };

/**
 * The open book. Where the embedded database was lost (killed, stopped by hand) the next call starts it again and
 * opens it anew; a failed opening is not remembered, so the call after it tries once more.
 *
 * @throws BookRefused when a person must change something first
 */
export async function getDb(): Promise<Db> {
  kept.holdproofBook ??= opened();
  const book = await kept.holdproofBook;
  if (book.alive()) return book;
  return reopened(book);
}

async function opened(): Promise<Db> {
  try {
    return await openBook();
  } catch (error) {
    kept.holdproofBook = undefined;
    throw error;
  }
}

/** Callers that find the same lost book wait for the same new one. */
async function reopened(lost: Db): Promise<Db> {
  if ((await kept.holdproofBook) === lost) {
    const next = opened();
    next.catch(() => {}); // told to whoever waits for it; while the lost one closes nobody may
    kept.holdproofBook = next;
    await lost.close();
  }
  return getDb();
}
