import { profile as published } from '#lib/limits/profiles.ts';
import type { Draft, Entry } from '#shared/entries/entry.ts';
import { canonicalText } from '#shared/envelope.ts';
import type { Problem } from '#shared/problem.ts';
import { applyAmendments } from './amend.ts';
import type { Kitchen } from './book.ts';
import { inOrder } from './order.ts';

type Members = Record<string, unknown>;
/** Set-up of which a form sends all members, also those that nobody touched on it. */
const wholes = ['site', 'limits', 'equipment', 'person', 'probe', 'food', 'plan'] as const;
export type Whole = (typeof wholes)[number];
const isWhole = (kind: string): kind is Whole => (wholes as readonly string[]).includes(kind);

/** Which thing an entry says: each kind names its thing by its own name, and there is one site. */
const thingOf = (kind: Whole, body: Members): string => (kind === 'site' ? 'site' : String(body[kind]));

/** The entries of one thing of the set-up, the one in force last. */
function writtenOf(kind: Whole, thing: string, entries: readonly Entry[]): Entry[] {
  const now = applyAmendments(inOrder(entries), Number.POSITIVE_INFINITY).entries;
  return inOrder(now).filter(
    (entry) => entry.kind === kind && thingOf(kind, entry.body as Members) === thing,
  );
}

/** The entry by which a thing of the set-up stands now: what a form that shows it stands on. Null = none. */
export const standsOn = (kind: Whole, thing: string, entries: readonly Entry[]): string | null =>
  writtenOf(kind, thing, entries).at(-1)?.id ?? null;

const same = (a: unknown, b: unknown): boolean => canonicalText(a ?? null) === canonicalText(b ?? null);

/** Members that are a choice of the program's: their value is a code, which the page says better than this can. */
const choices: ReadonlySet<string> = new Set(
  'unit clock language paper kind role colour scale class counted looks'.split(' '),
);

/** A value as a problem can say it; "none" = nothing short enough to be said. */
function shown(member: string, value: unknown, kitchen: Kitchen): string {
  if (member === 'profile' && typeof value === 'string')
    return published(value)?.name ?? kitchen.limits.get(value)?.body.name ?? value;
  if (typeof value === 'number') return String(value);
  return typeof value === 'string' && !choices.has(member) ? value : 'none';
}

/**
 * What another hand changed while a form stood open and this draft would change back: a problem for each member, with
 * who changed it and what it is now. Members that the other left alone are the form's to write.
 * @param was ids of the entries that the form was shown from; none = whoever sent it says nothing of what they saw
 */
export function changedMeanwhile(
  draft: Draft,
  was: ReadonlySet<string>,
  entries: readonly Entry[],
  kitchen: Kitchen,
): Problem[] {
  if (was.size === 0 || !isWhole(draft.kind)) return [];
  const written = writtenOf(draft.kind, thingOf(draft.kind, draft.body as Members), entries);
  const seen = written.findLast(({ id }) => was.has(id));
  const latest = written.at(-1);
  if (seen === undefined || latest === undefined || seen.id === latest.id || latest.id === draft.id)
    return [];
  const [before, now, meant] = [seen.body as Members, latest.body as Members, draft.body as Members];
  return [...new Set([...Object.keys(before), ...Object.keys(now)])]
    .filter((member) => !same(before[member], now[member]) && !same(meant[member], now[member]))
    .map((member) => ({
      field: `body.${member}`,
      problem: 'changed_meanwhile',
      remedy: 'look_over_and_save',
      values: { by: kitchen.people.get(latest.by)?.name ?? '–', now: shown(member, now[member], kitchen) },
    }));
}
