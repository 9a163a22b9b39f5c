import 'server-only';
import type { Db } from '#db/connect.ts';
import { noteClock } from '#db/device-clock.ts';
import type { Session } from './session.ts';

/** Measures the clock of a device that says when it sent (`sent` in the query, ms). Without it nothing is noted. */
export async function noteClockOf(db: Db, session: Session, request: Request, came: number): Promise<void> {
  const sent = new URL(request.url).searchParams.get('sent');
  if (sent === null || !/^\d{1,16}$/.test(sent)) return;
  await noteClock(db, session, Number(sent), came);
}
