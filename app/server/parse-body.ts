import type * as z from 'zod';
import { problemsOf } from '#shared/entries/issues.ts';
import { Refused } from './door.ts';
import { readJson } from './read-json.ts';

/** What a request's JSON says, by its schema. @throws Refused 422 with each problem, by field */
export async function parseBody<S extends z.ZodType>(request: Request, schema: S): Promise<z.infer<S>> {
  const read = await readJson(request);
  if (read.problem !== null) throw new Refused(422, [read.problem]);
  const parsed = schema.safeParse(read.json);
  if (!parsed.success) throw new Refused(422, problemsOf(parsed.error, read.json));
  return parsed.data;
}
