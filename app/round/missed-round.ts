import type { Book } from '#lib/fold/book.ts';
import { roundDue } from '#lib/fold/round-plan.ts';

/** When a round was due that nobody walked and about which nobody has said anything yet (ms); null = none. */
export function missedRound(book: Book): number | null {
  const due = roundDue(book);
  if (due === null || due.state !== 'overdue') return null;
  const said = book.rounds.some(
    ({ body }) =>
      body.status === 'missed' && body.planned_at !== null && Date.parse(body.planned_at) === due.dueAt,
  );
  return said ? null : due.dueAt;
}
