import type { Kitchen } from '#lib/fold/book.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import type { Offered } from './find-limits.ts';

/** Every profile that can be chosen: the published ones, and those that this kitchen made and still uses. */
export function offeredLimits(kitchen: Pick<Kitchen, 'limits' | 'site'>): Offered[] {
  const published = profileIds.flatMap((id): Offered[] => {
    const one = profile(id);
    return one === null
      ? []
      : [{ id, name: one.name, place: one.place, edition: one.edition, force: one.force, over: null }];
  });
  const own = [...kitchen.limits.values()].flatMap(({ body }): Offered[] => {
    const parent = profile(body.extends);
    if (parent === null || !(body.active || body.limits === kitchen.site?.profile)) return [];
    const { place, edition } = parent;
    return [{ id: body.limits, name: body.name, place, edition, force: 'house', over: parent.name }];
  });
  return [...own, ...published];
}
