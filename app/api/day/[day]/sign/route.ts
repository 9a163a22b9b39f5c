import { NextResponse } from 'next/server';
import { getDb } from '#app/server/db.ts';
import { door, languageOf, refusal } from '#app/server/door.ts';
import { parseBody } from '#app/server/parse-body.ts';
import { said } from '#app/server/said.ts';
import { freshSecret, knownOf, requireSession } from '#app/server/session.ts';
import { daySheet } from '#db/day-sheet.ts';
import { type Signed, signDay } from '#db/sign.ts';
import { changeWords } from '#lib/sheet/change-words.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { signRequest } from '#shared/requests/sign.ts';
import { localDate } from '#shared/time.ts';

/** Signs a day as it was read. Refused, with what changed in words, when it is another day by now. */
export const POST = door(async (request) => {
  const session = await requireSession(request);
  const [, , , day] = new URL(request.url).pathname.split('/');
  if (!localDate.safeParse(day).success || day === undefined) {
    throw refusal(404, 'no_such_sheet', 'choose_offered_day');
  }
  const { by, hash, seq, meaning, openItems } = await parseBody(request, signRequest);
  if (!freshSecret(session, by)) throw refusal(403, 'secret_again', 'confirm_secret', {}, 'by');
  const db = await getDb();
  const { site, device } = session;
  const writer = { site, device, knownOf: (person: string) => knownOf(session, person) };
  const toSign = { day, by, read: { hash, seq }, meaning, openItems };
  const signed = await signDay(db, writer, toSign, Date.now);
  if (signed.status === 'signed') return NextResponse.json(signed);
  const language = languageOf(request);
  const now = await daySheet(db, site, day, Date.now());
  const changes = now ? inWords(signed, new SheetNames(now.now.day, sheetWords(language), language)) : [];
  return NextResponse.json({ problems: said(signed.problems, language), changes }, { status: 409 });
});

const mostChanges = 20;

const inWords = (signed: Extract<Signed, { status: 'refused' }>, names: SheetNames): string[] =>
  signed.changes.slice(0, mostChanges).map((change) => changeWords(names, change));
