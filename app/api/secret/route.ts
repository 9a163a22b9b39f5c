import { NextResponse } from 'next/server';
import { door } from '#app/server/door.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { resetSecret, setOwnSecret } from '#app/server/secret-change.ts';
import { requireDevice } from '#app/server/session.ts';
import { setHand } from '#app/server/set-cookies.ts';
import { changeSecret } from '#shared/requests/secret.ts';

/** A person's own new secret, or a forgotten one taken away. The book says that it happened and by whom. */
export const POST = door(async (request) => {
  const session = await requireDevice(request);
  const asked = await parseBody(request, changeSecret);
  const response = NextResponse.json({ person: asked.person });
  if (asked.change === 'reset') {
    await resetSecret(session, asked);
    return response;
  }
  await setOwnSecret(session, asked);
  setHand(response, request, asked.person);
  return response;
});
