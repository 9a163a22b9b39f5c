import type { Entry } from '#shared/entries/entry.ts';
import type { Kitchen, LimitsInForce, Odd } from './book.ts';
import { ofKind, whenOf } from './order.ts';

/** Ids in a body that name something of the set-up, with the message that says it is not known. */
const named: {
  field: string;
  things: keyof Omit<Kitchen, 'site' | 'plans' | 'limits' | 'adjusted'>;
  key: string;
}[] = [
  { field: 'equipment', things: 'equipment', key: 'unknown_equipment' },
  { field: 'probe', things: 'probes', key: 'unknown_probe' },
  { field: 'food', things: 'foods', key: 'unknown_food' },
  { field: 'decided_by', things: 'people', key: 'unknown_person' },
];

const setUp: ReadonlySet<string> = new Set([
  'site',
  'person',
  'equipment',
  'probe',
  'food',
  'plan',
  'limits',
]);

/** What an entry names and the book does not know: taken as written, and said. */
export function unknownNames(entry: Entry, kitchen: Kitchen, batches: ReadonlySet<string>): Odd[] {
  if (setUp.has(entry.kind)) return [];
  const at = whenOf(entry);
  const body: Record<string, unknown> = entry.body;
  const odd = named.flatMap(({ field, things, key }) => {
    const id = body[field];
    return typeof id === 'string' && !kitchen[things].has(id)
      ? [{ entry: entry.id, at, key, values: { kind: entry.kind } }]
      : [];
  });
  const { batch } = body;
  if (entry.kind !== 'batch' && typeof batch === 'string' && !batches.has(batch))
    odd.push({ entry: entry.id, at, key: 'unknown_batch', values: { kind: entry.kind } });
  if (kitchen.people.size > 0 && !kitchen.people.has(entry.by))
    odd.push({ entry: entry.id, at, key: 'unknown_person', values: { kind: entry.kind } });
  return odd;
}

/** The kitchen names limits that nobody here knows: nothing can be judged, and the entry that names them is said. */
export function unknownLimits(seen: readonly Entry[], limits: LimitsInForce): Odd[] {
  if (limits.profile !== null) return [];
  const entry = ofKind(seen, 'site').findLast(({ body }) => body.profile === limits.id);
  return entry
    ? [{ entry: entry.id, at: whenOf(entry), key: 'unknown_limits', values: { id: limits.id } }]
    : [];
}
