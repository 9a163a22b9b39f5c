import type { Kitchen } from '#lib/fold/book.ts';
import type { Role } from '#shared/entries/person.ts';
import { atLeast } from './may-write.ts';
import type { Session } from './session.ts';

/** Whether this role may let others in: invite, stand by at a first secret, take a forgotten one away. */
export const letsIn = (role: Role, other: Role): boolean =>
  atLeast(role, 'lead') && (atLeast(role, other) || atLeast(role, 'manager'));

/** Those who entered their secret on this device this shift and may let `other` in, or (null) anybody at all. */
export function standingBy(session: Session, kitchen: Kitchen, other: string | null): string[] {
  const role = other === null ? 'crew' : (kitchen.people.get(other)?.role ?? 'owner');
  return session.hands
    .map(({ person }) => kitchen.people.get(person))
    .filter((one) => one?.active && one.person !== other && letsIn(one.role, role))
    .flatMap((one) => (one ? [one.person] : []));
}
