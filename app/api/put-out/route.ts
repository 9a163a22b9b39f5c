import { NextResponse } from 'next/server';
import { door } from '#app/server/door.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { putOut } from '#app/server/put-out.ts';
import { requireSession } from '#app/server/session.ts';
import { oneDevice } from '#shared/requests/secret.ts';

/** Puts a device out of the kitchen: one that was lost, sold or broken. */
export const POST = door(async (request) => {
  const session = await requireSession(request);
  const { device } = await parseBody(request, oneDevice);
  await putOut(session, device);
  return NextResponse.json({ device });
});
