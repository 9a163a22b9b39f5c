import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { requireDevice } from '#app/server/session.ts';
import { setConfirmed, setHand } from '#app/server/set-cookies.ts';
import { endSignIn } from '#db/devices.ts';
import { onePerson } from '#shared/requests/secret.ts';

/** Signs one person out of this device, or everybody. What is typed on its screens stays there. */
export const POST = door(async (request) => {
  const { site, device, hand } = await requireDevice(request);
  const { person } = await parseBody(request, onePerson);
  const db = await getDb();
  await endSignIn(db, site, device, person, Date.now);
  const response = NextResponse.json({ person });
  if (person === null || person === hand) setHand(response, request, null);
  await setConfirmed(response, request, db, null);
  return response;
});
