import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { enterDemo } from '#app/server/demo.ts';
import { door } from '#app/server/door.ts';
import { setDevice } from '#app/server/set-cookies.ts';
import { demoSecrets } from '#db/demo/fill.ts';

/** Fills an empty installation with the invented night and lets this browser in. Its secrets are said on the screen. */
export const POST = door(async (request) => {
  const db = await getDb();
  const token = await enterDemo(db);
  const response = NextResponse.json({ next: '/sign-in', secrets: demoSecrets });
  await setDevice(response, request, db, token);
  return response;
});
