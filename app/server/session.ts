import 'server-only';
import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import type { Known } from '#shared/entries/entry.ts';
import type { Language } from '#shared/words/messages.ts';
import { cookieOf, refusal } from './door.ts';
import { sessionOf } from './session-of.ts';
import { isNear, sessionTimes } from './session-times.ts';
import { siteExists } from './sites.ts';

/** Someone who entered a secret on this device this shift. Instants in ms. */
export type SignedIn = { person: string; since: number; lastSeenAt: number; confirmedAt: number };

/** What the server knows of the browser that asks. The site of an entry comes from here, never from a body. */
export type Session = {
  site: string;
  device: string;
  deviceName: string;
  language: Language;
  room: 'day' | 'pit' | null; // null = as the device prefers
  hands: SignedIn[];
  hand: string | null; // who writes now, chosen by a tap; null = nobody yet, or left alone for a while
};

/** The session of the page being drawn; null when the kitchen does not know this device. */
export async function currentSession(): Promise<Session | null> {
  const jar = await cookies();
  return sessionOf((name) => jar.get(name)?.value, Date.now());
}

/**
 * For pages: a session in which somebody has signed in this shift. Else the browser is sent on: to the first
 * run when there is no kitchen yet, to the sign-in when the device is unknown or nobody is on.
 */
export async function entrance(): Promise<Session> {
  const session = await currentSession();
  if (session !== null && session.hands.length > 0) return session;
  if (!(await siteExists())) redirect('/first-run');
  redirect('/sign-in');
}

/** For routes: the session of a device that the kitchen knows. @throws Refused 401 */
export async function requireDevice(request: Request): Promise<Session> {
  const session = await sessionOf((name) => cookieOf(request, name) ?? undefined, Date.now());
  if (session === null) throw refusal(401, 'device_unknown', 'enrol_device');
  return session;
}

/** For routes that write: also somebody has entered a secret on it this shift. @throws Refused 401 */
export async function requireSession(request: Request): Promise<Session> {
  const session = await requireDevice(request);
  if (session.hands.length === 0) throw refusal(401, 'nobody_signed_in', 'sign_in');
  return session;
}

/**
 * For pages that write in one hand's name: the hand chosen by a tap, or the only one signed in here. With several
 * and none chosen nobody is taken for granted: the browser is sent to ask whose hand writes.
 */
export function handNow(session: Session): string {
  const [only, another] = session.hands;
  const hand = session.hand ?? (another === undefined ? only?.person : undefined);
  return hand ?? redirect('/sign-in');
}

/** How the book knows that `by` wrote it: by a secret entered on this device this shift, or by a tap alone. */
export const knownOf = (session: Session, by: string): Known =>
  session.hands.some((each) => each.person === by) ? 'secret' : 'tap';

/** Whether `person` entered the secret on this device within the last minutes: asked for decisions and signatures. */
export const freshSecret = (session: Session, person: string, now: number = Date.now()): boolean =>
  session.hands.some(
    (each) => each.person === person && isNear(each.confirmedAt, sessionTimes.freshMin, now),
  );
