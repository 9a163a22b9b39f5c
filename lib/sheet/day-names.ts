import type { Body, Entry } from '#shared/entries/entry.ts';
import type { CanonicalDay } from './day-schema.ts';
import type { DayScope } from './day-scope.ts';

type Doc = Omit<CanonicalDay, 'people' | 'equipment'>;

/** The people whom the sheet names, as they were called then; who came later is called as first written. */
export function peopleDocs(scope: DayScope, doc: Doc): CanonicalDay['people'] {
  const named = idsIn(doc);
  const people = new Map<string, Body<'person'>>(scope.book.kitchen.people);
  for (const entry of inSeq(scope)) {
    if (entry.kind === 'person' && !people.has(entry.body.person)) people.set(entry.body.person, entry.body);
  }
  return [...people.values()]
    .filter((person) => named.has(person.person))
    .map(({ person, name, initials, role, title }) => ({ id: person, name, initials, role, title }))
    .sort((a, b) => a.initials.localeCompare(b.initials, 'en') || (a.id < b.id ? -1 : 1));
}

/** The equipment that the sheet names, in the order of the walk. */
export function equipmentDocs(scope: DayScope, doc: Doc): CanonicalDay['equipment'] {
  const named = idsIn(doc);
  const all = new Map<string, Body<'equipment'>>(scope.book.kitchen.equipment);
  for (const entry of inSeq(scope)) {
    if (entry.kind === 'equipment' && !all.has(entry.body.equipment))
      all.set(entry.body.equipment, entry.body);
  }
  return [...all.values()]
    .filter((one) => named.has(one.equipment))
    .sort(
      (a, b) =>
        a.order - b.order || a.name.localeCompare(b.name, 'en') || (a.equipment < b.equipment ? -1 : 1),
    )
    .map(({ equipment, name, kind }) => ({ id: equipment, name, kind }));
}

const inSeq = (scope: DayScope): Entry[] => [...scope.entries.values()].sort((a, b) => a.seq - b.seq);

/** Every text in the document: an id is named when it is one of them. */
function idsIn(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === 'string') found.add(value);
  else if (Array.isArray(value)) for (const one of value) idsIn(one, found);
  else if (value !== null && typeof value === 'object')
    for (const one of Object.values(value)) idsIn(one, found);
  return found;
}
