import 'server-only';
import { v7 } from 'uuid';
import type { Db } from '#db/connect.ts';
import { appendIn, type Writer } from '#db/ledger.ts';
import type { Body, Draft, DraftOf, Kind } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import { isoOf } from '#shared/time.ts';

/** An entry that the server writes itself, about what was done just now. */
export function serverDraft<K extends Kind>(kind: K, body: Body<K>, by: string): DraftOf<K> {
  const now = isoOf(Date.now());
  return { id: v7(), kind, version: versions[kind], at: now, entered_at: now, by, body };
}

/**
 * Writes entries that are not refused for what they say, in a transaction of the caller's: what they tell of is done
 * with them. @throws Error when the ledger refuses one: a program fault
 */
export async function noteInBook(within: Db, writer: Writer, drafts: readonly Draft[]): Promise<void> {
  const receipts = await appendIn(within, writer, drafts, Date.now, () => []);
  const refused = receipts.find(({ status }) => status === 'refused');
  if (refused) throw new Error(`noteInBook: refused ${JSON.stringify(refused)}`);
}
