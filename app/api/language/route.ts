import { NextResponse } from 'next/server';
import { door } from '#app/server/door.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { setLanguage } from '#app/server/set-cookies.ts';
import { chooseLanguage } from '#shared/requests/secret.ts';

/** The language of this device. Anybody may choose it, also before the first run. */
export const POST = door(async (request) => {
  const { language } = await parseBody(request, chooseLanguage);
  const response = NextResponse.json({ language });
  setLanguage(response, request, language);
  return response;
});
