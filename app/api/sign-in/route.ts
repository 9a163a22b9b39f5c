import { NextResponse } from 'next/server';
import { personHere, rightSecret } from '#app/server/check.ts';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { requireDevice } from '#app/server/session.ts';
import { setHand, setLanguage } from '#app/server/set-cookies.ts';
import { openSignIn } from '#db/devices.ts';
import { personAndSecret } from '#shared/requests/secret.ts';

/** A secret at the start of a shift: from now on this person's entries from this device are known by it. */
export const POST = door(async (request) => {
  const { site, device } = await requireDevice(request);
  const { person, secret } = await parseBody(request, personAndSecret);
  const db = await getDb();
  const kitchen = await kitchenOf(db, site);
  const { language } = personHere(kitchen, person);
  const { mustSet } = await rightSecret(db, kitchen, { site, person, typed: secret });
  const { sinceMs } = await openSignIn(db, { site, device, person, how: 'secret' }, Date.now);
  const response = NextResponse.json({ person, since: sinceMs, must_set: mustSet });
  setHand(response, request, person);
  setLanguage(response, request, language);
  return response;
});
