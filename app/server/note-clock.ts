import 'server-only';
import type { Db } from '#db/connect.ts';
import { noteClock } from '#db/device-clock.ts';
import type { Session } from './session.ts';

/**
 * Measures the clock of a device that says when it sent or asked (`sent` in the query or the header `device-clock`,
 * ms). Without it nothing is noted.
 */
export async function noteClockOf(db: Db, session: Session, request: Request, came: number): Promise<void> {
  const sent = new URL(request.url).searchParams.get('sent') ?? request.headers.get('device-clock');
  if (sent === null || !/^\d{1,16}$/.test(sent)) return;
  await noteClock(db, session, Number(sent), came);
}
