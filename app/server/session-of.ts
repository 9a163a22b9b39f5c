import 'server-only';
import { deviceAndSignIns, type SignIn } from '#db/devices.ts';
import { getDb } from './db.ts';
import { deviceCookie, type SealedDevice, unsealed } from './device-cookie.ts';
import type { Session, SignedIn } from './session.ts';
import { isNear, sessionTimes } from './session-times.ts';

type Cookies = (name: string) => string | undefined;

/** A sign-in stands until the shift is over or its person has written nothing here for a while. */
const stands = (row: SignIn, now: number): boolean =>
  isNear(row.sinceMs, sessionTimes.shiftMin, now) && isNear(row.lastSeenMs, sessionTimes.idleMin, now);

function handOf(row: SignIn, confirmed: SealedDevice['confirmed']): SignedIn {
  const again = confirmed?.person === row.person ? confirmed.at : 0;
  return {
    person: row.person,
    since: row.sinceMs,
    lastSeenAt: row.lastSeenMs,
    confirmedAt: Math.max(row.sinceMs, again),
  };
}

/** The session that these cookies stand for, or null for a device that the kitchen does not know. */
export async function sessionOf(cookie: Cookies, now: number): Promise<Session | null> {
  const value = cookie(deviceCookie);
  if (value === undefined) return null;
  const db = await getDb();
  const held = await unsealed(db, value);
  if (held === null) return null;
  const known = await deviceAndSignIns(db, held.token);
  if (known === null) return null;
  const { device, open } = known;
  const room = cookie('room');
  return {
    site: device.site,
    device: device.device,
    deviceName: device.name,
    language: cookie('language') === 'es' ? 'es' : 'en',
    room: room === 'day' || room === 'pit' ? room : null,
    hands: open.filter((row) => stands(row, now)).map((row) => handOf(row, held.confirmed)),
    hand: cookie('hand') ?? null,
  };
}
