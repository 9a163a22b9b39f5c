import type { Draft } from '#shared/entries/entry.ts';
import { Refused, refusal } from './door.ts';
import { readJson } from './read-json.ts';

const mostBytes = 1024 * 1024;
const mostDrafts = 500; // a night on paper, typed in at once

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/**
 * The drafts of a request. Each one's own faults are found where it is taken (the ledger parses it by its
 * schema); here only that there is a list of things. @throws Refused 422
 */
export async function parseDrafts(request: Request): Promise<Draft[]> {
  const { json, problem } = await readJson(request, mostBytes);
  if (problem !== null) throw new Refused(422, [problem]);
  if (!Array.isArray(json)) throw refusal(422, 'not_a_list', 'send_list');
  if (json.length > mostDrafts) throw refusal(422, 'too_many', 'send_less', { most: mostDrafts });
  const odd = json.findIndex((each) => !isObject(each));
  if (odd >= 0) throw refusal(422, 'wrong_shape', 'reload', {}, String(odd));
  return json as Draft[];
}
