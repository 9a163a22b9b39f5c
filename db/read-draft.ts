import { type Draft, draftSchema, isKind, type Kind } from '#shared/entries/entry.ts';
import { problemsOf } from '#shared/entries/issues.ts';
import { canonicalText } from '#shared/envelope.ts';
import type { Problem } from '#shared/problem.ts';

/** A draft as it can be written, with the text of its body that the chain covers; or what is wrong with it by itself. */
export type ReadDraft = { draft: Draft; body: string; problems: null } | { problems: Problem[] };

/** Reads a draft by the schema of its kind. What the book says of it is not asked here. */
export function readDraft(sent: Draft): ReadDraft {
  const kind: unknown = sent.kind; // as it came: nothing has parsed it yet
  if (!isKind(kind)) {
    const typed = typeof kind === 'string' ? kind.slice(0, 60) : typeof kind;
    return wrong('kind', 'unknown_kind', 'reload', { typed });
  }
  const parsed = schemaOf(sent.kind).safeParse(sent);
  if (!parsed.success) return { problems: problemsOf(parsed.error, sent) };
  const body = textOf(parsed.data.body);
  if (body === null) return wrong('body', 'unreadable_sign', 'type_again');
  return { draft: withLowerCaseIds(parsed.data), body, problems: null };
}

const wrong = (
  field: string,
  problem: string,
  remedy: string,
  values: Problem['values'] = {},
): ReadDraft => ({ problems: [{ field, problem, remedy, values }] });

const schemas = new Map<Kind, ReturnType<typeof draftSchema>>();
function schemaOf(kind: Kind): ReturnType<typeof draftSchema> {
  const schema = schemas.get(kind) ?? draftSchema(kind);
  schemas.set(kind, schema);
  return schema;
}

/** UUIDs are one id in either case; the chain covers them in lower case. */
const withLowerCaseIds = (draft: Draft): Draft => ({
  ...draft,
  id: draft.id.toLowerCase(),
  by: draft.by.toLowerCase(),
});

/** The body's canonical text; null where a text in it is not whole (half of a surrogate pair). */
function textOf(body: object): string | null {
  try {
    return canonicalText(body);
  } catch {
    return null;
  }
}
