import { NextResponse } from 'next/server';
import { personHere } from '#app/server/check.ts';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { knownOf, requireSession } from '#app/server/session.ts';
import { setHand, setLanguage } from '#app/server/set-cookies.ts';
import { onePerson } from '#shared/requests/secret.ts';

/** Whose hand writes from now on: tap the hand, tap the name. */
export const POST = door(async (request) => {
  const session = await requireSession(request);
  const { person } = await parseBody(request, onePerson);
  const response = NextResponse.json({ person, known: person === null ? null : knownOf(session, person) });
  if (person !== null) {
    const { language } = personHere(await kitchenOf(await getDb(), session.site), person);
    setLanguage(response, request, language);
  }
  setHand(response, request, person);
  return response;
});
