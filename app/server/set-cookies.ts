import type { NextResponse } from 'next/server';
import type { Db } from '#db/connect.ts';
import type { Language } from '#shared/words/messages.ts';
import { cookieOptions, deviceCookie, sealed, unsealed } from './device-cookie.ts';
import { cookieOf } from './door.ts';
import { sessionTimes } from './session-times.ts';

/** Who writes now. Forgotten by the browser when nothing is written for some minutes; null = at once. */
export function setHand(response: NextResponse, request: Request, person: string | null): void {
  const seconds = person === null ? 0 : sessionTimes.handIdleMin * 60;
  response.cookies.set('hand', person ?? '', cookieOptions(request, seconds));
}

/** The language in which this device speaks from now on. */
export function setLanguage(response: NextResponse, request: Request, language: Language): void {
  response.cookies.set('language', language, cookieOptions(request));
}

/** The sealed cookie of a device that was let in just now. */
export async function setDevice(
  response: NextResponse,
  request: Request,
  db: Db,
  token: string,
): Promise<void> {
  response.cookies.set(deviceCookie, await sealed(db, { token, confirmed: null }), cookieOptions(request));
}

/** Notes in the sealed cookie that this person entered the secret just now; null = nobody did. */
export async function setConfirmed(
  response: NextResponse,
  request: Request,
  db: Db,
  person: string | null,
): Promise<void> {
  const held = await unsealed(db, cookieOf(request, deviceCookie) ?? '');
  if (held === null) return;
  const confirmed = person === null ? null : { person, at: Date.now() };
  response.cookies.set(deviceCookie, await sealed(db, { ...held, confirmed }), cookieOptions(request));
}
