import { v7 } from 'uuid';
import type { Body, Draft, DraftOf, Kind } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import type { Problem } from '#shared/problem.ts';
import type { Receipt } from '#shared/receipt.ts';
import { isoOf } from '#shared/time.ts';

/** A new entry as this device sends it: its id and its time of writing are made here. `at` = when it was seen. */
export function draft<K extends Kind>(kind: K, body: Body<K>, hand: { by: string; at?: string }): DraftOf<K> {
  const now = isoOf(Date.now());
  return {
    id: v7(),
    kind,
    version: versions[kind],
    at: hand.at ?? now,
    entered_at: now,
    by: hand.by,
    body,
  };
}

export type Posted = { receipts: Receipt[] } | { problems: Problem[] };

/** The schemas come after the first tap; without them (no network yet) the server alone checks. */
async function problemsHere(drafts: readonly Draft[]): Promise<Problem[]> {
  try {
    const [{ draftSchema }, { problemsOf }] = await Promise.all([
      import('#shared/entries/entry.ts'),
      import('#shared/entries/issues.ts'),
    ]);
    return drafts.flatMap((each, index) => {
      const parsed = draftSchema(each.kind).safeParse(each);
      return parsed.success ? [] : problemsOf(parsed.error, each, drafts.length === 1 ? '' : String(index));
    });
  } catch {
    return [];
  }
}

const noNetwork: Problem = { field: '', problem: 'no_network', remedy: 'kept_here_retry', values: {} };
const noAnswer: Problem = { field: '', problem: 'no_answer', remedy: 'kept_here_retry', values: {} };

/**
 * Any POST of this application: its JSON answer, or problems. It never throws and changes nothing that was typed,
 * so the caller keeps the figures until it has a receipt. Posting the same again is harmless: ids are kept.
 */
export async function post<T extends object>(
  path: string,
  body: unknown,
): Promise<T | { problems: Problem[] }> {
  let response: Response;
  try {
    response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
      credentials: 'same-origin',
    });
  } catch {
    return { problems: [noNetwork] };
  }
  try {
    return (await response.json()) as T | { problems: Problem[] };
  } catch {
    return { problems: [noAnswer] };
  }
}

/** Sends drafts to the book in their order. Receipts come one a draft; a refused one names its problem. */
export async function postEntries(drafts: readonly Draft[]): Promise<Posted> {
  const problems = await problemsHere(drafts);
  if (problems.length > 0) return { problems };
  return post<{ receipts: Receipt[] }>('/api/entries', drafts);
}
