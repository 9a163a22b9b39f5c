import type { Figures } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { CanonicalDay } from './day-schema.ts';

type ProfileDoc = CanonicalDay['profile'];

/**
 * Which code the day was judged by, and the roles in which a local profile differs from the code that it extends.
 * A profile that this program does not know keeps its id, so that a sheet never names another one.
 */
export function profileDoc(id: string): ProfileDoc {
  const found = profile(id);
  if (!found) return { id, name: id, edition: null, local_changes: [] };
  const cited = citedOf(found.figures);
  const own = cited.filter((figure) => figure.edition === found.edition);
  return {
    id: found.id,
    name: found.name,
    edition: found.edition,
    local_changes: own.length === cited.length ? [] : own,
  };
}

/** Every figure of the profile that has a section and an edition, by its role. */
function citedOf(figures: Figures): ProfileDoc['local_changes'] {
  return Object.entries(figures).flatMap(([role, figure]) =>
    sectionsIn(figure).map((one) => ({ role, ...one })),
  );
}

function sectionsIn(value: unknown): { section: string; edition: string }[] {
  if (Array.isArray(value)) return value.flatMap(sectionsIn);
  if (value === null || typeof value !== 'object') return [];
  if ('section' in value && 'edition' in value) {
    return [{ section: String(value.section), edition: String(value.edition) }];
  }
  return Object.values(value).flatMap(sectionsIn);
}
