import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { type LimitsRole, limitsRoles } from '#shared/entries/limits.ts';
import { canonicalText } from '#shared/envelope.ts';
import { msOf } from '#shared/time.ts';
import type { Kitchen, LocalLimits, WrittenBy } from './book.ts';
import { ofKind, whenOf } from './order.ts';

/**
 * The last body of each thing at or before `asOf`. A thing that was set up later is known by its first entry: a
 * night kept on paper and typed in after the set-up still has its names.
 */
function lastOf<T extends Entry>(entries: readonly T[], idOf: (entry: T) => string, asOf: number) {
  const last = new Map<string, T['body']>();
  for (const entry of entries) {
    const id = idOf(entry);
    if (whenOf(entry) <= asOf || !last.has(id)) last.set(id, entry.body);
  }
  return last;
}

/** Since which entry each change stands: this one, or the earlier one that said the same over the same parent. */
function sinceOf(
  { body }: EntryOf<'limits'>,
  own: WrittenBy,
  before: LocalLimits | undefined,
): Map<LimitsRole, WrittenBy> {
  const roles = limitsRoles.filter((role) => body.changes[role] !== undefined);
  const stood = (role: LimitsRole): WrittenBy | undefined =>
    before?.body.extends === body.extends && sameChange(before.body.changes[role], body.changes[role])
      ? before.since?.get(role)
      : undefined;
  return new Map(roles.map((role) => [role, stood(role) ?? own]));
}

const sameChange = (a: unknown, b: unknown): boolean => canonicalText(a ?? null) === canonicalText(b ?? null);

/** Profiles made on screen, each as last written at or before `asOf`, with the hand that wrote it. */
function localLimits(entries: readonly Entry[], asOf: number): Map<string, LocalLimits> {
  const last = new Map<string, LocalLimits>();
  for (const entry of ofKind(entries, 'limits')) {
    const id = entry.body.limits;
    if (whenOf(entry) > asOf && last.has(id)) continue;
    const own = { by: entry.by, at: msOf(entry.at), entry: entry.id };
    last.set(id, { body: entry.body, ...own, since: sinceOf(entry, own, last.get(id)) });
  }
  return last;
}

/** The last adjustment of each thermometer at or before `asOf`: an earlier reading has none of a later one. */
function adjustments(entries: readonly Entry[], asOf: number): NonNullable<Kitchen['adjusted']> {
  const own = ofKind(entries, 'probe_adjusted').filter((entry) => whenOf(entry) <= asOf);
  return new Map(
    own.map((entry) => [
      entry.body.probe,
      { body: entry.body, by: entry.by, at: msOf(entry.at), entry: entry.id },
    ]),
  );
}

const sorted = <B>(things: Map<string, B>, before: (a: B, b: B) => number): Map<string, B> =>
  new Map([...things].sort(([, a], [, b]) => before(a, b)));

/** The set-up in force at `asOf` (ms), from entries in order with amendments applied. */
export function foldKitchen(entries: readonly Entry[], asOf: number): Kitchen {
  const equipment = lastOf(ofKind(entries, 'equipment'), ({ body }) => body.equipment, asOf);
  return {
    site: lastOf(ofKind(entries, 'site'), () => 'site', asOf).get('site') ?? null,
    people: lastOf(ofKind(entries, 'person'), ({ body }) => body.person, asOf),
    equipment: sorted(equipment, (a, b) => a.order - b.order || a.name.localeCompare(b.name, 'en')),
    probes: lastOf(ofKind(entries, 'probe'), ({ body }) => body.probe, asOf),
    adjusted: adjustments(entries, asOf),
    foods: lastOf(ofKind(entries, 'food'), ({ body }) => body.food, asOf),
    limits: localLimits(entries, asOf),
    plans: lastOf(ofKind(entries, 'plan'), ({ body }) => body.plan, asOf),
  };
}
