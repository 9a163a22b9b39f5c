import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import type { Confirming } from '#lib/sheet/confirmed.ts';
import { dayFrame } from '#lib/sheet/day-frame.ts';
import { dayOfText } from '#lib/sheet/day-of-text.ts';
import type { CanonicalDay } from '#lib/sheet/day-schema.ts';
import { type SheetState, sheetState } from '#lib/sheet/sheet-state.ts';
import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { canonicalText } from '#shared/envelope.ts';
import type { Db } from './connect.ts';
import { headOf } from './load.ts';
import { loadDay } from './load-day.ts';
import { sha256 } from './sha256.ts';
import { signedTextOf } from './signed-texts.ts';

/** One text of one day's sheet: what the PDF, the CSV and the JSON are made from. */
export type SheetText = {
  day: CanonicalDay;
  text: string; // its RFC 8785 text, to the character
  hash: string;
  revision: number;
  /** The signature that stands under this text; null = unsigned. */
  signature: EntryOf<'signature'> | null;
  /** End of the chain under the signature; of an unsigned text, when it was made. */
  head: { seq: number; hash: string } | null;
  /** Of a signed text, the signature under it; of one not signed, every signature in what the day was made from. */
  confirming: Confirming;
};

/**
 * `paper`: what the kitchen prints on. `otherwise`: of a day that is signed and of which the book says nothing new,
 * what this program would make of it, where that is another text than the signed one; else null.
 */
export type DaySheet = {
  now: SheetText;
  state: SheetState;
  paper: 'letter' | 'a4';
  otherwise: CanonicalDay | null;
};

/**
 * The sheet of a day as the book tells it now. Where this very text is signed it is the stored one; where nothing
 * came into the book since it was signed, it is the stored one too, whatever a mended rule would say today.
 * @param nowMs the moment of asking
 * @returns null when no kitchen is set up
 */
export async function daySheet(db: Db, site: string, day: string, nowMs: number): Promise<DaySheet | null> {
  const end = await headOf(db, site); // before the entries: what comes in between is seen as a change
  const entries = await loadDay(db, site, day);
  const made = canonicalDay(entries, day, { knownUntil: nowMs });
  if (!made) return null;
  const text = canonicalText(made);
  const hash = sha256(text);
  const state = sheetState(entries, day, { hash, over: made.over });
  const head = state.signed ? state.signed.body.head : end;
  const paper = dayFrame(entries, day)?.site.body.paper ?? 'letter';
  const stands = await signedAsItStood(db, site, { entries, day, nowMs, text, state });
  if (stands) return { ...stands, paper, otherwise: made };
  const confirming = state.signed
    ? [state.signed]
    : entries.filter((entry): entry is EntryOf<'signature'> => entry.kind === 'signature');
  return {
    state,
    paper,
    otherwise: null,
    now: { day: made, text, hash, revision: state.revision, signature: state.signed, head, confirming },
  };
}

/**
 * A signed day whose text this program would write otherwise though no entry since then speaks of it: made from what
 * the book knew at the signature, today's text is the same. So the rules were mended, and the day stays as signed.
 */
async function signedAsItStood(
  db: Db,
  site: string,
  now: { entries: readonly Entry[]; day: string; nowMs: number; text: string; state: SheetState },
): Promise<Pick<DaySheet, 'now' | 'state'> | null> {
  const last = now.state.signatures.at(-1);
  const end = last?.body.head;
  if (now.state.state !== 'changed' || !last || !end) return null;
  const known = now.entries.filter((entry) => entry.seq <= end.seq);
  const then = canonicalDay(known, now.day, { knownUntil: now.nowMs });
  if (!then || canonicalText(then) !== now.text) return null;
  const { hash, revision } = last.body;
  const signed = await signedSheet(db, site, now.state, revision);
  return signed && { now: signed, state: { ...now.state, state: 'signed', signed: last, hash, revision } };
}

/**
 * The stored text of a signed revision, and nothing else.
 * @returns null when the day has no such revision, or its text cannot be read by this program
 */
export async function signedSheet(
  db: Db,
  site: string,
  state: SheetState,
  revision: number,
): Promise<SheetText | null> {
  const signature = state.signatures.findLast((entry) => entry.body.revision === revision);
  if (!signature) return null;
  const { hash, head } = signature.body;
  const text = await signedTextOf(db, site, hash);
  if (text === null || sha256(text) !== hash) return null;
  const day = dayOfText(text);
  return day && { day, text, hash, revision, signature, head, confirming: [signature] };
}
