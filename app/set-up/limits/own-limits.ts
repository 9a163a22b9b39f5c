import type { Kitchen } from '#lib/fold/book.ts';
import { limitsOf } from '#lib/fold/limits-of.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body } from '#shared/entries/entry.ts';

/** The limits of a kitchen for the screens that change them; null = it names limits that nobody knows. */
export type Standing = {
  /** What is judged by. */ profile: Profile;
  /** The published limits under it, or the same. */ published: Profile;
  /** The kitchen's own ones in force; null = the published count as they stand. */ own: Body<'limits'> | null;
};

export function standingLimits(kitchen: Pick<Kitchen, 'site' | 'limits'>): Standing | null {
  const { profile, published, local } = limitsOf(kitchen);
  return profile === null || published === null ? null : { profile, published, own: local?.body ?? null };
}
