import { v7 } from 'uuid';
import type { Body, Draft, DraftOf, Kind } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import type { Problem } from '#shared/problem.ts';
import type { Receipt, SaidProblem } from '#shared/receipt.ts';
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

/** With the server's words; without them when it could not be asked (`no_network`, `no_answer`). */
export type ClientProblem = Problem & { words?: SaidProblem['words'] };

export type Posted = { receipts: Receipt[] } | { problems: ClientProblem[] };

const noNetwork: Problem = { field: '', problem: 'no_network', remedy: 'kept_here_retry', values: {} };
const noAnswer: Problem = { field: '', problem: 'no_answer', remedy: 'kept_here_retry', values: {} };

/**
 * After this long a network that took the request and gives nothing back counts as none: what waits behind it, in this
 * tab and in the others, is tried again. A night on paper sent over a poor line takes less. House choice.
 */
export const patienceMs = 30_000;

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
      signal: AbortSignal.timeout(patienceMs),
    });
  } catch {
    return { problems: [noNetwork] };
  }
  try {
    return (await response.json()) as T | { problems: ClientProblem[] };
  } catch {
    return { problems: [noAnswer] };
  }
}

/**
 * Ids with a word of their own: made twice on purpose, written while nobody was signed in, accepted by a lead; and `was`,
 * entries of the set-up from which a form was shown.
 */
type Spoken = {
  sure?: readonly string[];
  waited?: readonly string[];
  accepted?: readonly string[];
  was?: readonly string[];
};

/** The query that says them; `sent` is this device's clock, by which the book knows how far it is off. */
function query(spoken: Spoken): string {
  const params = new URLSearchParams({ sent: String(Date.now()) });
  for (const [name, ids] of Object.entries(spoken)) if (ids.length > 0) params.set(name, ids.join(','));
  return params.toString();
}

/**
 * Sends drafts to the book in their order. Receipts come one a draft; a refused one names its problem in words.
 * Nothing is held back here: forms have checked with the same schemas, and the server checks again.
 */
export const postEntries = (drafts: readonly Draft[], spoken: Spoken = {}): Promise<Posted> =>
  post<{ receipts: Receipt[] }>(`/api/entries?${query(spoken)}`, drafts);
