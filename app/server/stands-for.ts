import type { Kitchen } from '#lib/fold/book.ts';
import type { Draft } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import { atLeast } from './may-write.ts';
import { knownOf, type Session } from './session.ts';

/** Ids of drafts that were written while nobody was signed in on the device, and of those that a lead accepts. */
export type Unsigned = { waited: ReadonlySet<string>; accepted: ReadonlySet<string> };

/** The lead, manager or owner who is signed in on this device and accepts; null = nobody here may. */
export function acceptor(session: Session, kitchen: Kitchen): string | null {
  const may = (person: string): boolean => {
    const known = kitchen.people.get(person);
    return known?.active === true && atLeast(known.role, 'lead');
  };
  const signed = session.hands.map(({ person }) => person).filter(may);
  return session.hand !== null && signed.includes(session.hand) ? session.hand : (signed[0] ?? null);
}

/**
 * What was written while its writer was not signed in here waits for that person's secret, or for a lead who
 * stands for it. It is never dropped and never taken on a tap alone.
 */
export function standsFor(draft: Draft, session: Session, kitchen: Kitchen, unsigned: Unsigned): Problem[] {
  if (!unsigned.waited.has(draft.id) || knownOf(session, draft.by) === 'secret') return [];
  if (unsigned.accepted.has(draft.id) && acceptor(session, kitchen) !== null) return [];
  return [{ field: 'by', problem: 'lead_accepts', remedy: 'writer_or_lead', values: {} }];
}
