import type { Db } from '#db/connect.ts';
import { headOf, loadAll } from '#db/load.ts';
import { storeSignedText } from '#db/signed-texts.ts';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import type { DraftOf } from '#shared/entries/entry.ts';
import { canonicalText } from '#shared/envelope.ts';

/**
 * The demo's signature with what only the filled book knows: the hash of the canonical day as it stands, its text
 * stored, and the head of the chain. @throws Error when the day cannot be told: the file is wrong then
 */
export async function withItsDay(
  db: Db,
  site: string,
  draft: DraftOf<'signature'>,
): Promise<DraftOf<'signature'>> {
  const day = canonicalDay(await loadAll(db, site), draft.body.day);
  if (!day) throw new Error(`demo: no day ${draft.body.day} to sign`);
  const hash = await storeSignedText(db, site, canonicalText(day));
  return { ...draft, body: { ...draft.body, hash, head: await headOf(db, site) } };
}
