import { eq } from 'drizzle-orm';
import { v7 } from 'uuid';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import type { CanonicalDay } from '#lib/sheet/day-schema.ts';
import { type Change, differences } from '#lib/sheet/difference.ts';
import { openItems, refsOf } from '#lib/sheet/exceptions.ts';
import { revisionOf, signaturesOf } from '#lib/sheet/sheet-state.ts';
import type { Body, DraftOf, Entry } from '#shared/entries/entry.ts';
import { canonicalText } from '#shared/envelope.ts';
import type { Problem } from '#shared/problem.ts';
import { isoOf } from '#shared/time.ts';
import type { Db } from './connect.ts';
import { erasedDay } from './erase/erased-day.ts';
import { appendIn, type Clock, type Writer } from './ledger.ts';
import { loadDay } from './load-day.ts';
import { head } from './schema.ts';
import { sha256 } from './sha256.ts';
import { storeSignedText } from './signed-texts.ts';
import { transact } from './transact.ts';

/** What a manager signs: the day as it was read, and what was decided on each open item. */
export type ToSign = {
  day: string;
  by: string;
  /** What was on the screen: SHA-256 of the text, and how far the book went when it was made. */
  read: { hash: string; seq: number };
  meaning: string;
  openItems: Body<'signature'>['open_items'];
};

export type Signed =
  | { status: 'signed'; entry: string; seq: number; revision: number; hash: string }
  | { status: 'refused'; problems: Problem[]; changes: Change[] };

type End = { seq: number; hash: string };

/**
 * Signs one operating day: makes its text anew from the book, compares it with what was read, stores the text under
 * its hash and appends the signature, all in one transaction behind the lock of the site's chain. So nothing comes
 * into the book between the text and the signature. Whether the signer's secret is fresh is the caller's to ask:
 * only the caller knows the device.
 */
export const signDay = (db: Db, writer: Writer, toSign: ToSign, clock: Clock): Promise<Signed> =>
  transact(db, async (within): Promise<Signed> => {
    const end = await lockedEnd(within, writer.site);
    const now = clock();
    // What is left of a day that was erased would be signed as if it were the day.
    const erased = await erasedDay(within, writer.site, toSign.day);
    if (erased) return refused('day', 'no_such_sheet', 'choose_offered_day');
    const entries = await loadDay(within, writer.site, toSign.day);
    const signer = signerOf(entries, toSign.by);
    if (!signer) return refused('by', 'may_not_sign', 'ask_manager');
    const day = canonicalDay(entries, toSign.day, { knownUntil: now });
    if (!day?.over) return refused('day', 'day_not_over', 'sign_after_end');
    const text = canonicalText(day);
    const hash = sha256(text);
    if (hash !== toSign.read.hash) return changed(entries, toSign, day);
    const undecided = undecidedItems(day, toSign.openItems);
    if (undecided > 0) return refused('openItems', 'items_undecided', 'decide_first', { count: undecided });

    await storeSignedText(within, writer.site, text);
    const draft = signatureDraft({ toSign, day, hash, end, now, signer, entries });
    const [receipt] = await appendIn(within, writer, [draft], clock, () => []);
    if (receipt?.status !== 'written') {
      throw new Error(`signDay: the book did not take the signature: ${JSON.stringify(receipt)}`);
    }
    return { status: 'signed', entry: draft.id, seq: receipt.seq, revision: draft.body.revision, hash };
  });

const refused = (
  field: string,
  problem: string,
  remedy: string,
  values: Problem['values'] = {},
  changes: Change[] = [],
): Signed => ({ status: 'refused', problems: [{ field, problem, remedy, values }], changes });

async function lockedEnd({ drizzle }: Db, site: string): Promise<End> {
  const [end] = await drizzle.select().from(head).where(eq(head.site, site)).for('update');
  if (end === undefined) throw new Error(`signDay: no site ${site} in this book`);
  return { seq: end.seq, hash: end.hash };
}

/** The signer as the book knows them now; null for one who is no manager or owner, or works here no longer. */
function signerOf(entries: readonly Entry[], by: string): Body<'person'> | null {
  const person = entries
    .filter((entry) => entry.kind === 'person')
    .sort((a, b) => a.seq - b.seq)
    .findLast((entry) => entry.body.person === by)?.body;
  return person?.active && (person.role === 'manager' || person.role === 'owner') ? person : null;
}

/** What came into the book since the day was read is named: the same day, made from the entries up to then. */
function changed(entries: readonly Entry[], toSign: ToSign, day: CanonicalDay): Signed {
  const known = entries.filter((entry) => entry.seq <= toSign.read.seq);
  const before = canonicalDay(known, toSign.day);
  const changes =
    before && sha256(canonicalText(before)) === toSign.read.hash ? differences(before, day) : [];
  return refused('day', 'day_changed', 'read_again', { count: changes.length }, changes);
}

function undecidedItems(day: CanonicalDay, decided: ToSign['openItems']): number {
  const refs = new Set(decided.map((item) => item.ref));
  return openItems(day).filter((one) => !refsOf(one).some((ref) => refs.has(ref))).length;
}

function signatureDraft(made: {
  toSign: ToSign;
  day: CanonicalDay;
  hash: string;
  end: End;
  now: number;
  signer: Body<'person'>;
  entries: readonly Entry[];
}): DraftOf<'signature'> {
  const { toSign, day, hash, end, now, signer } = made;
  const hashes = signaturesOf(made.entries, toSign.day).map((entry) => entry.body.hash);
  return {
    id: v7({ msecs: now }),
    kind: 'signature',
    version: 1,
    at: isoOf(now),
    entered_at: isoOf(now),
    by: toSign.by,
    body: {
      day: toSign.day,
      revision: revisionOf(hashes, hash),
      from: day.from,
      to: day.to,
      name: signer.name,
      role: signer.role,
      meaning: toSign.meaning,
      open_items: toSign.openItems,
      hash,
      head: end,
    },
  };
}
