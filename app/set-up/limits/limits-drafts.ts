import { draft } from '#app/client/post-entries.ts';
import type { Body, Draft } from '#shared/entries/entry.ts';
import type { LimitsRole } from '#shared/entries/limits.ts';
import { bodyWith } from './change-typed.ts';

type Now = { site: Body<'site'>; by: string };

/** The entries that put limits of the kitchen's own in force: the limits, and the kitchen's choice of them once. */
export const draftsToSet = (body: Body<'limits'>, { site, by }: Now): Draft[] => [
  draft('limits', body, { by }),
  ...(site.profile === body.limits ? [] : [draft('site', { ...site, profile: body.limits }, { by })]),
];

/**
 * The entries that take one change back. With the last one the kitchen goes back to the published limits, and its own
 * are used no longer; they keep what they changed, for a profile that changes nothing is none.
 */
export function draftsToTakeBack(own: Body<'limits'>, role: LimitsRole, { site, by }: Now): Draft[] {
  const without = bodyWith(own, role, null) as Body<'limits'>;
  if (Object.keys(without.changes).length > 0) return [draft('limits', without, { by })];
  return [
    draft('site', { ...site, profile: own.extends }, { by }),
    draft('limits', { ...own, active: false }, { by }),
  ];
}
