import { NextResponse } from 'next/server';
import { loadForPhone } from '#app/server/book.ts';
import { answering } from '#app/server/door.ts';
import { requireSession } from '#app/server/session.ts';

/** What a phone keeps to go on without network: the entries of kitchen now, whose hands are on, and our clock. */
export const GET = answering(async (request) => {
  const session = await requireSession(request);
  return NextResponse.json(
    {
      site: session.site,
      now: Date.now(),
      entries: await loadForPhone(session),
      hand: session.hand,
      hands: session.hands.map(({ person }) => person),
      lang: session.language,
    },
    { headers: { 'cache-control': 'no-store' } },
  );
});
