import type { Role } from '#shared/entries/person.ts';
import type { Kitchen } from './book.ts';

/** Until a kitchen says otherwise, only a manager or owner releases food that was blocked. */
const decidesUnlessSaid = 'manager';

/** Whether this role may release food that was blocked, by the house's rule. Owners and managers always may. */
export function mayRelease(role: Role | undefined, kitchen: Kitchen): boolean {
  if (role === 'manager' || role === 'owner') return true;
  return role === 'lead' && (kitchen.site?.house.decides ?? decidesUnlessSaid) === 'lead';
}

/** The role that a person has in the kitchen; undefined for nobody it knows. */
export const roleOf = (person: string, kitchen: Kitchen): Role | undefined =>
  kitchen.people.get(person)?.role;
