import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { enrolBy } from '#app/server/enrolment.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { setDevice, setHand } from '#app/server/set-cookies.ts';
import { enrol } from '#shared/requests/secret.ts';

/** A device that the kitchen does not know comes in, by a code or by a manager's own secret. */
export const POST = door(async (request) => {
  const db = await getDb();
  const { token, invited, signedIn } = await enrolBy(db, await parseBody(request, enrol));
  const response = NextResponse.json({ person: invited });
  await setDevice(response, request, db, token);
  if (signedIn !== null) setHand(response, request, signedIn);
  return response;
});
