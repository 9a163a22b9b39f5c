import type { Draft } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import { Refused, refusal } from './door.ts';
import { readJson } from './read-json.ts';

const mostBytes = 1024 * 1024;
const mostDrafts = 500; // a night on paper, typed in at once
/** The largest honest entry, limits of the house with every figure changed, has some five hundred values, five levels deep. */
const most = { values: 900, levels: 8 } as const;

/** One member of the list that was sent: a draft, or what is wrong with it before anybody asks what it means. */
export type Sent = { draft: Draft; problem: null } | { draft: null; id: string | null; problem: Problem };

/**
 * What a request sends, one by one in its order. A draft's own faults are found where it is taken (the ledger
 * parses it by its schema); here only that it is a thing of bearable size. One that is not stops none of the others.
 * @throws Refused 422 when the whole cannot be read as a list
 */
export async function parseDrafts(request: Request): Promise<Sent[]> {
  const { json, problem } = await readJson(request, mostBytes);
  if (problem !== null) throw new Refused(422, [problem]);
  if (!Array.isArray(json)) throw refusal(422, 'not_a_list', 'send_list');
  if (json.length > mostDrafts) throw refusal(422, 'too_many', 'send_less', { most: mostDrafts });
  return json.map(sentOf);
}

function sentOf(value: unknown): Sent {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return wrong(null, 'wrong_shape', 'reload');
  const { id } = value as { id?: unknown };
  const known = typeof id === 'string' ? id.slice(0, 60) : null;
  if (isDeeper(value, most.levels)) return wrong(known, 'too_deep', 'reload', { most: most.levels });
  if (hasMore(value, most.values)) return wrong(known, 'too_many_fields', 'reload', { most: most.values });
  return { draft: value as Draft, problem: null };
}

const wrong = (id: string | null, problem: string, remedy: string, values: Problem['values'] = {}): Sent => ({
  draft: null,
  id,
  problem: { field: '', problem, remedy, values },
});

const partsOf = (value: unknown): unknown[] =>
  typeof value === 'object' && value !== null ? Object.values(value) : [];

/** Level by level, never by calling itself: what is too deep must not exhaust the stack that finds it. */
function isDeeper(value: unknown, levels: number): boolean {
  let at = [value];
  for (let level = 0; level < levels; level += 1) {
    at = at.flatMap(partsOf);
    if (at.length === 0) return false;
  }
  return true;
}

function hasMore(value: unknown, values: number): boolean {
  let count = 0;
  for (let at = [value]; at.length > 0; at = at.flatMap(partsOf)) {
    count += at.length;
    if (count > values) return true;
  }
  return false;
}
