import { cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import type { Known } from '#shared/entries/entry.ts';
import type { Language } from '#shared/words/messages.ts';
import { sessionOf } from './session-of.ts';
import { sessionTimes } from './session-times.ts';
import { siteExists } from './sites.ts';

/** Someone who entered a secret on this device this shift. Instants in ms. */
export type SignedIn = { person: string; since: number; confirmedAt: number };

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

/** The session of the page being drawn; null when the kitchen does not know this device. Throws only on database faults. */
export async function currentSession(): Promise<Session | null> {
  const jar = await cookies();
  return sessionOf((name) => jar.get(name)?.value);
}

/**
 * For pages: a session in which somebody has signed in this shift. Else the browser is sent on: to the first
 * run when there is no kitchen yet, to the sign-in when the device is unknown or nobody is on.
 */
export async function entrance(): Promise<Session> {
  const session = await currentSession();
  if (session && session.hands.length > 0) return session;
  if (!(await siteExists())) redirect('/first-run');
  redirect('/sign-in');
}

/** How the book knows that `by` wrote it: by a secret entered on this device this shift, or by a tap alone. */
export const knownOf = (session: Session, by: string): Known =>
  session.hands.some((each) => each.person === by) ? 'secret' : 'tap';

/** Whether `person` entered the secret on this device within the last minutes: asked for decisions and signatures. */
export const freshSecret = (session: Session, person: string, now: number = Date.now()): boolean =>
  session.hands.some(
    (each) => each.person === person && now - each.confirmedAt <= sessionTimes.freshMin * 60_000,
  );
