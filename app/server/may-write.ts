import type { Kitchen } from '#lib/fold/book.ts';
import type { Draft, Kind } from '#shared/entries/entry.ts';
import { setUpKinds } from '#shared/entries/entry.ts';
import type { Role } from '#shared/entries/person.ts';
import type { Problem } from '#shared/problem.ts';
import { freshSecret, knownOf, type Session } from './session.ts';

/** Kinds that only their own door writes, after more than a tap: a secret, the signed text, an enrolment, an erasure. */
const ownDoor: ReadonlySet<Kind> = new Set([
  'signature',
  'secret_set',
  'secret_reset',
  'device_enrolled',
  'retention',
  'erasure',
]);
const setUp: ReadonlySet<Kind> = new Set(setUpKinds);
const rank: Readonly<Record<Role, number>> = { reader: 0, crew: 1, lead: 2, manager: 3, owner: 4 };

/** Whether this role stands at least as high as that one. */
export const atLeast = (role: Role, least: Role): boolean => rank[role] >= rank[least];

const refused = (
  field: string,
  problem: string,
  remedy: string,
  values: Problem['values'] = {},
): Problem[] => [{ field, problem, remedy, values }];

/** A person entry gives no role above its writer's, touches nobody above, and leaves someone who can let others in. */
function peopleProblems(draft: Draft & { kind: 'person' }, role: Role, kitchen: Kitchen): Problem[] {
  const before = kitchen.people.get(draft.body.person);
  if (!atLeast(role, draft.body.role) || (before && !atLeast(role, before.role)))
    return refused('body.role', 'role_above_yours', 'ask_higher_role');
  const keepsKey = draft.body.active && atLeast(draft.body.role, 'manager');
  const others = [...kitchen.people.values()].some(
    (one) => one.person !== draft.body.person && one.active && atLeast(one.role, 'manager'),
  );
  if (before && atLeast(before.role, 'manager') && !keepsKey && !others)
    return refused('body.active', 'last_manager', 'name_another_manager', { name: before.name });
  return [];
}

/**
 * A food that nobody has set up, typed while a batch is begun: any hand that writes may name it, without a class. It
 * loosens nothing, for food of no class is read on the strictest rule; to class it is the set-up's.
 */
const namesNewFood = (draft: Draft, kitchen: Kitchen): boolean =>
  draft.kind === 'food' &&
  draft.body.class === 'unknown' &&
  !draft.body.sealed_commercial &&
  !kitchen.foods.has(draft.body.food);

function setUpProblems(draft: Draft, role: Role, session: Session, kitchen: Kitchen): Problem[] {
  const least: Role = draft.kind === 'site' || draft.kind === 'limits' ? 'manager' : 'lead';
  if (!atLeast(role, least)) return refused('by', 'set_up_not_yours', 'ask_manager');
  if (knownOf(session, draft.by) !== 'secret') return refused('by', 'secret_this_shift', 'sign_in');
  return draft.kind === 'person' ? peopleProblems(draft, role, kitchen) : [];
}

/**
 * Whether the one who writes may write this kind on this device now. Empty = yes. What the food and the record
 * allow is asked of the fold (`admit`); this is only about people and secrets.
 */
export function mayWrite(draft: Draft, session: Session, kitchen: Kitchen, now: number): Problem[] {
  if (ownDoor.has(draft.kind)) return refused('kind', 'own_door', 'use_its_screen');
  const by = kitchen.people.get(draft.by);
  if (!by?.active) return refused('by', 'not_in_people', 'choose_hand');
  if (by.role === 'reader') return refused('by', 'reader_writes_nothing', 'choose_hand');
  if (setUp.has(draft.kind) && !namesNewFood(draft, kitchen))
    return setUpProblems(draft, by.role, session, kitchen);
  if (draft.kind === 'decision' && !freshSecret(session, draft.by, now))
    return refused('by', 'secret_again', 'confirm_secret');
  return [];
}
