import { NextResponse } from 'next/server';
import { aside } from '#app/server/aside.ts';
import { getDb } from '#app/server/db.ts';
import { door } from '#app/server/door.ts';
import { inOrderSent } from '#app/server/in-order-sent.ts';
import { noteClockOf } from '#app/server/note-clock.ts';
import { noteSeen } from '#app/server/note-seen.ts';
import { parseDrafts } from '#app/server/parse-drafts.ts';
import { requireSession } from '#app/server/session.ts';
import { setHand } from '#app/server/set-cookies.ts';
import { writeEntries } from '#app/server/write-entries.ts';

/**
 * Ids in the query: `sure`, a look like one already there that was made a second time; `waited`, written while
 * nobody was signed in on the device; `accepted`, of those the ones that a lead stands for; `was`, entries of the
 * set-up from which the form was shown: what another hand changed since is not written over.
 */
const idsOf = (request: Request, name: 'sure' | 'waited' | 'accepted' | 'was'): ReadonlySet<string> =>
  new Set(new URL(request.url).searchParams.get(name)?.toLowerCase().split(',') ?? []);

/** Entries into the book: one receipt a draft, in order. The same draft again gets the same receipt. */
export const POST = door(async (request) => {
  const came = Date.now();
  const session = await requireSession(request); // the site comes from here, never from the body
  const sent = await parseDrafts(request);
  const drafts = sent.flatMap(({ draft }) => draft ?? []);
  const db = await getDb();
  const taken = await writeEntries(db, session, drafts, {
    sure: idsOf(request, 'sure'),
    waited: idsOf(request, 'waited'),
    accepted: idsOf(request, 'accepted'),
    was: idsOf(request, 'was'),
  });
  const receipts = inOrderSent(sent, taken, session.language);
  const response = NextResponse.json({ receipts });
  const by = drafts.at(-1)?.by;
  if (taken.at(-1)?.seq != null && by !== undefined) setHand(response, request, by);
  await aside(noteSeen(db, session, drafts), noteClockOf(db, session, request, came));
  return response;
});
