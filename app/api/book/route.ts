import { createHash } from 'node:crypto';
import { NextResponse } from 'next/server';
import { aside } from '#app/server/aside.ts';
import { loadForPhone } from '#app/server/book.ts';
import { getDb } from '#app/server/db.ts';
import { answering } from '#app/server/door.ts';
import { noteClockOf } from '#app/server/note-clock.ts';
import { requireSession, type Session } from '#app/server/session.ts';
import { headOf } from '#db/load.ts';

/**
 * What a phone keeps to go on without network: the entries of kitchen now, whose hands are on, and our clock
 * (header `book-clock`, ms). A phone that names the edition it has (`if-none-match`) gets 304 and no body while
 * nothing was written since: time alone only takes entries away. Its own clock (header `device-clock`, ms) is measured.
 */
export const GET = answering(async (request) => {
  const came = Date.now();
  const session = await requireSession(request);
  await aside(noteClockOf(await getDb(), session, request, came));
  const hands = session.hands.map(({ person }) => person);
  const edition = await editionOf(session, hands); // before the entries: what comes in between is asked for again
  const headers = { 'cache-control': 'no-store', etag: edition, 'book-clock': String(Date.now()) };
  if (request.headers.get('if-none-match') === edition)
    return new NextResponse(null, { status: 304, headers });
  const entries = await loadForPhone(session);
  return NextResponse.json(
    { site: session.site, entries, hand: session.hand, hands, lang: session.language },
    { headers: { ...headers, 'book-clock': String(Date.now()) } },
  );
});

/** Names what the answer holds: the end of the site's chain, and what the session adds to it. */
async function editionOf(session: Session, hands: readonly string[]): Promise<string> {
  const end = await headOf(await getDb(), session.site);
  const said = JSON.stringify([session.site, end, session.hand, hands, session.language]);
  return `"${createHash('sha256').update(said).digest('base64url')}"`;
}
