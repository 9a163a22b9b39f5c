import { local } from './local-profiles.ts';
import { type Profile, profileSource, resolved } from './profile.ts';
import { us } from './us/us.ts';
import { world } from './world/world.ts';

/** Every profile that can be chosen; a parent stands before the profiles that extend it. */
const sources: readonly unknown[] = [...us, ...world, ...local];

function resolveAll(): ReadonlyMap<string, Profile> {
  const known = new Map<string, Profile>();
  for (const source of sources) {
    const checked = profileSource.parse(source); // a figure without its source stops the program here
    if (known.has(checked.id)) throw new Error(`profiles: ${checked.id} stands twice`);
    const parent = checked.extends === null ? null : known.get(checked.extends);
    if (parent === undefined)
      throw new Error(`profiles: ${checked.id} extends ${checked.extends}, which is not known`);
    known.set(checked.id, resolved(checked, parent));
  }
  return known;
}

const profiles = resolveAll();

/** The ids that `profile` knows, in the order in which they are offered. */
export const profileIds: readonly string[] = [...profiles.keys()];

/** The limits of a place by id; null when no profile has that id. */
export const profile = (id: string): Profile | null => profiles.get(id) ?? null;
