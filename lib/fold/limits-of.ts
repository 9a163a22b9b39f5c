import type { Profile } from '#lib/limits/profile.ts';
import { profile as published } from '#lib/limits/profiles.ts';
import type { Kitchen, LimitsInForce, LocalLimits } from './book.ts';
import { localProfile } from './local-profile.ts';

/** The profile until a kitchen has chosen one. */
const unlessChosen = 'fda_2022';

const made = new WeakMap<LocalLimits['body'], Profile>();

/** The same body gives the same profile, so it is laid over its parent once. */
function madeOf({ body }: LocalLimits, parent: Profile): Profile {
  const known = made.get(body) ?? localProfile(body, parent);
  made.set(body, known);
  return known;
}

/** A profile by its id: published, or made on screen in this kitchen. Never throws: an id that is not known has null. */
export function limitsBy(kitchen: Pick<Kitchen, 'limits'>, id: string): LimitsInForce {
  const shipped = published(id);
  if (shipped !== null) return { id, profile: shipped, local: null, published: shipped };
  const local = kitchen.limits.get(id) ?? null;
  const parent = local === null ? null : published(local.body.extends);
  return {
    id,
    profile: local === null || parent === null ? null : madeOf(local, parent),
    local,
    published: parent,
  };
}

/**
 * The limits of a kitchen as its set-up says: the one place where an id becomes a profile. The kitchen was folded as of
 * a moment, so a day is judged by what was in force at its end.
 */
export const limitsOf = (kitchen: Pick<Kitchen, 'site' | 'limits'>): LimitsInForce =>
  limitsBy(kitchen, kitchen.site?.profile ?? unlessChosen);
