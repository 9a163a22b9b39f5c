import type { EntryOf } from '#shared/entries/entry.ts';
import type { Confirming } from './confirmed.ts';
import type { CanonicalDay } from './day-schema.ts';

/** What stands on a print beside the day itself: which text it is and when it was printed. */
export type Printed = {
  /** SHA-256 of the day's canonical text. */
  hash: string;
  revision: number;
  signed: {
    name: string;
    role: string;
    at: string;
    meaning: string;
    /** The signer is one of those whose readings are on the sheet. */
    tookReadings: boolean;
    /** What the signer decided on what was open, by the reference of an exception. */
    items: readonly { ref: string; decision: string }[];
  } | null;
  /** Head of the chain under the signature; of an unsigned sheet, when it was printed. */
  head: { seq: number; hash: string } | null;
  printedAt: string; // instant
  /** Signatures that stood in the book: what they confirm is printed as confirmed. */
  confirming: Confirming;
};

/** @param printedAt instant of printing, as text */
export const printedOf = (
  sheet: {
    day: CanonicalDay;
    hash: string;
    revision: number;
    signature: EntryOf<'signature'> | null;
    head: Printed['head'];
    confirming: Confirming;
  },
  printedAt: string,
): Printed => ({
  hash: sheet.hash,
  revision: sheet.revision,
  signed: sheet.signature && {
    name: sheet.signature.body.name,
    role: sheet.signature.body.role,
    at: sheet.signature.at,
    meaning: sheet.signature.body.meaning,
    tookReadings: tookReadings(sheet.day, sheet.signature.by),
    items: sheet.signature.body.open_items,
  },
  head: sheet.head,
  confirming: sheet.confirming,
  printedAt,
});

export const tookReadings = (day: CanonicalDay, person: string): boolean =>
  [...day.batches.flatMap((batch) => batch.readings), ...day.air, ...day.loose].some(
    (reading) => reading.by === person,
  );
