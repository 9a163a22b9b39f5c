import type { LimitsInForce, LocalLimits } from '#lib/fold/book.ts';
import { changesOf } from '#lib/fold/local-profile.ts';
import type { Figures } from '#lib/limits/profile.ts';
import type { LimitsRole } from '#shared/entries/limits.ts';
import type { CanonicalDay } from './day-schema.ts';
import { type DayScope, iso } from './day-scope.ts';

type ProfileDoc = CanonicalDay['profile'];
type LocalChangeDoc = ProfileDoc['local_changes'][number];

/**
 * Which code the day was judged by, and the roles in which a local profile differs from the code that it extends.
 * A profile that this program does not know keeps its id, so that a sheet never names another one.
 */
export function profileDoc(scope: DayScope): ProfileDoc {
  const { limits } = scope.book;
  const { id, profile: found } = limits;
  if (!found) return { id, name: id, edition: null, local_changes: [] };
  const local = localDoc(scope, limits);
  if (local) return local;
  const cited = citedOf(found.figures);
  const own = cited.filter((figure) => figure.edition === found.edition);
  return {
    id: found.id,
    name: found.name,
    edition: found.edition,
    local_changes: own.length === cited.length ? [] : own,
  };
}

/**
 * A profile made on screen: each figure that it changes with its ground (authority, document, date; of a stricter
 * one the name of the profile), and who entered it when. Only such a day has `entered`.
 */
function localDoc(scope: DayScope, { profile, local, published }: LimitsInForce): ProfileDoc | null {
  if (!profile || !local || !published) return null;
  return {
    id: profile.id,
    name: profile.name,
    edition: published.name,
    local_changes: changesOf(local.body, published).map(({ role, change }) => ({
      role,
      section: change.section,
      edition:
        [change.authority, change.document, change.dated].filter((part) => part !== null).join(', ') ||
        profile.name,
      ...earlier(scope, local, role),
    })),
    entered: { by: local.by, at: iso(scope, local.at) },
  };
}

/** Who entered a change before the profile was last written, and when. */
function earlier(scope: DayScope, local: LocalLimits, role: LimitsRole): Pick<LocalChangeDoc, 'entered'> {
  const since = local.since?.get(role);
  if (since === undefined || since.entry === local.entry) return {};
  return { entered: { by: since.by, at: iso(scope, since.at) } };
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
