import type { Problem } from '#shared/problem.ts';
import { needsGround } from './limits-direction.ts';
import type { LocalChange } from './local-profile.ts';

const grounds = ['authority', 'document', 'dated'] as const;

/**
 * What speaks against one changed figure: nothing is published there to change, it is the published figure already, or
 * it is looser and has no authority, document and date.
 */
export function changeProblems({ role, change, direction }: LocalChange): Problem[] {
  const field = `body.changes.${role}`;
  const typed = 'value' in change ? 'value' : 'minutes' in change ? 'minutes' : 'seconds';
  const wrong = (part: string, problem: string, remedy: string): Problem => ({
    field: `${field}.${part}`,
    problem,
    remedy,
    values: {},
  });
  if (direction === 'not_offered') return [wrong(typed, 'nothing_to_change', 'choose_other_figure')];
  if (direction === 'same') return [wrong(typed, 'same_as_published', 'leave_blank_or_change')];
  if (!needsGround(direction)) return [];
  return grounds
    .filter((part) => change[part] === null)
    .map((part) => wrong(part, 'looser_needs_ground', 'name_ground_or_stricter'));
}
