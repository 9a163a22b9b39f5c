import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { makeFirstSite } from '#app/server/first-run.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { setDevice, setHand, setLanguage } from '#app/server/set-cookies.ts';
import { firstRun } from '#shared/requests/first-run.ts';

/** The first run: the kitchen, who answers for it, what it starts with, and this browser as its first device. */
export const POST = door(async (request) => {
  const asked = await parseBody(request, firstRun);
  const db = await getDb();
  const token = await makeFirstSite(db, asked);
  const response = NextResponse.json({ person: asked.person.person });
  await setDevice(response, request, db, token);
  setHand(response, request, asked.person.person);
  setLanguage(response, request, asked.person.language);
  return response;
});
