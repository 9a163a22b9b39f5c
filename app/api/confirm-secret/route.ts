import { NextResponse } from 'next/server';
import { personHere, rightSecret } from '#app/server/check.ts';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { requireDevice } from '#app/server/session.ts';
import { sessionTimes } from '#app/server/session-times.ts';
import { setConfirmed } from '#app/server/set-cookies.ts';
import { openSignIn } from '#db/devices.ts';
import { personAndSecret } from '#shared/requests/secret.ts';

/** The secret again, for a decision or a signature. Whoever was not signed in here is from now on. */
export const POST = door(async (request) => {
  const session = await requireDevice(request);
  const { person, secret } = await parseBody(request, personAndSecret);
  const db = await getDb();
  const kitchen = await kitchenOf(db, session.site);
  personHere(kitchen, person);
  await rightSecret(db, kitchen, { site: session.site, person, typed: secret });
  if (!session.hands.some((hand) => hand.person === person)) {
    const { site, device } = session;
    await openSignIn(db, { site, device, person, how: 'secret' }, Date.now);
  }
  const response = NextResponse.json({ person, good_for_min: sessionTimes.freshMin });
  await setConfirmed(response, request, db, person);
  return response;
});
