import { profile as published } from '#lib/limits/profiles.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import type { Kitchen } from './book.ts';
import { changeProblems } from './change-problems.ts';
import { limitsBy } from './limits-of.ts';
import { changesOf } from './local-profile.ts';

const wrong = (field: string, problem: string, remedy: string, values: Problem['values'] = {}): Problem => ({
  field,
  problem,
  remedy,
  values,
});

/**
 * What speaks against a profile made on screen: its parent is not published, it changes nothing, or a figure is looser
 * than the published one without authority, document and date.
 */
export function limitsProblems(body: Body<'limits'>, kitchen: Pick<Kitchen, 'site'>): Problem[] {
  const parent = published(body.extends);
  if (parent === null)
    return [wrong('body.extends', 'unknown_limits', 'choose_limits', { id: body.extends })];
  if (!body.active && kitchen.site?.profile === body.limits)
    return [wrong('body.active', 'limits_in_use', 'choose_other_limits')];
  const changes = changesOf(body, parent);
  if (changes.length === 0) return [wrong('body.changes', 'changes_nothing', 'change_one_figure')];
  return changes.flatMap(changeProblems);
}

/** A kitchen that names limits which are neither published nor made here would be judged by nothing. */
export const chosenProblems = (id: string, kitchen: Pick<Kitchen, 'limits'>): Problem[] =>
  limitsBy(kitchen, id).profile === null
    ? [wrong('body.profile', 'unknown_limits', 'choose_limits', { id })]
    : [];
