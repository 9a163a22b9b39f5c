import 'server-only';
import type { Db } from '#db/connect.ts';
import { seen } from '#db/devices.ts';
import type { Session } from './session.ts';

const noteEveryMs = 5 * 60_000; // finer than idleness needs, and no second write for each saved figure

/** Those who wrote just now are not idle. */
export async function noteSeen(db: Db, session: Session, drafts: readonly { by: string }[]): Promise<void> {
  const wrote = new Set(drafts.map(({ by }) => by));
  const stale = session.hands.filter(
    (hand) => wrote.has(hand.person) && Date.now() - hand.lastSeenAt > noteEveryMs,
  );
  for (const { person } of stale) await seen(db, session.site, session.device, person, Date.now);
}
