import { and, eq, gte, lt, notInArray } from 'drizzle-orm';
import type { Db } from '#db/connect.ts';
import { isErased } from '#db/erased.ts';
import { loadKinds } from '#db/load.ts';
import { ledger } from '#db/schema.ts';
import { dayFrame } from '#lib/sheet/day-frame.ts';
import { lastingKinds } from '#shared/entries/entry.ts';
import { covers } from '#shared/entries/erasure.ts';

/** That the text of a day's entries is gone, and what is left of it. */
export type ErasedDay = {
  day: string;
  at: string; // when the erasure came into the book
  seq: number; // its entry
  by: string; // the name of who had it done
  count: number; // entries of the day whose text is gone
  left: number; // entries of the day whose text is there, because newer ones are bound to them
  digest: string;
  sheets: string[]; // SHA-256 of its signed texts that went
  zone: string;
  clock: '12' | '24';
};

/** @returns null for a day of which nothing was erased */
export async function erasedDay(db: Db, site: string, day: string): Promise<ErasedDay | null> {
  const erasures = await loadKinds(db, site, ['erasure']);
  if (!erasures.some(({ body }) => day < body.before)) return null;
  const frame = dayFrame(await loadKinds(db, site, ['site']), day);
  if (frame === null) return null;
  const rows = await db.drizzle
    .select({ seq: ledger.seq, body: ledger.body })
    .from(ledger)
    .where(
      and(
        eq(ledger.site, site),
        gte(ledger.atMs, frame.from),
        lt(ledger.atMs, frame.to),
        notInArray(ledger.kind, [...lastingKinds, 'signature']), // of the day before, mostly
      ),
    );
  const gone = rows.filter(isErased);
  const said = erasures.findLast(
    ({ body }) =>
      gone.some(({ seq }) => covers(body.ranges, seq)) || body.sheets.some((sheet) => sheet.day === day),
  );
  if (said === undefined) return null;
  const people = await loadKinds(db, site, ['person']);
  const by = people.findLast(({ body }) => body.person === said.by)?.body.name ?? said.by;
  const sheets = erasures.flatMap(({ body }) =>
    body.sheets.flatMap((sheet) => (sheet.day === day ? [sheet.hash] : [])),
  );
  const { received_at: at, seq, body } = said;
  const { zone, clock } = frame.site.body;
  const counts = { count: gone.length, left: rows.length - gone.length };
  return { day, at, seq, by, ...counts, digest: body.digest, sheets, zone, clock };
}
