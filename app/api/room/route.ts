import { NextResponse } from 'next/server';
import { cookieOptions } from '#app/server/device-cookie.ts';
import { door } from '#app/server/door.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { chooseRoom } from '#shared/requests/secret.ts';

/** The light in which this device stands: day, dark pit, or (null) as the device prefers. */
export const POST = door(async (request) => {
  const { room } = await parseBody(request, chooseRoom);
  const response = NextResponse.json({ room });
  response.cookies.set('room', room ?? '', cookieOptions(request, room === null ? 0 : undefined));
  return response;
});
