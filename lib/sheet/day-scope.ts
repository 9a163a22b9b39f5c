import type { Book, Look } from '#lib/fold/book.ts';
import { ofKind } from '#lib/fold/order.ts';
import type { Entry, EntryOf, Kind } from '#shared/entries/entry.ts';
import { inZone, msOf } from '#shared/time.ts';
import type { DayFrame } from './day-frame.ts';
import type { ReadingDoc } from './day-schema.ts';

/** What every part of the canonical day is made from. */
export type DayScope = {
  frame: DayFrame;
  /**
   * The book as of the day's end (or the moment of asking); corrections, checks of thermometers, decisions and actions
   * from all that is known.
   */
  book: Book;
  entries: ReadonlyMap<string, Entry>;
};

/** An instant (ms) with the kitchen's own offset. */
export const iso = (scope: DayScope, ms: number): string => inZone(ms, scope.frame.site.body.zone);
export const isoText = (scope: DayScope, text: string): string => iso(scope, msOf(text));
export const isoOrNull = (scope: DayScope, ms: number | null | undefined): string | null =>
  ms == null ? null : iso(scope, ms);

export const inDay = (scope: DayScope, ms: number): boolean => ms >= scope.frame.from && ms < scope.frame.to;

/** Entries of one kind that were observed in the day, in order of (at, seq). */
export function ofDay<K extends Kind>(scope: DayScope, kind: K): EntryOf<K>[] {
  return ofKind([...scope.entries.values()], kind)
    .filter((entry) => inDay(scope, msOf(entry.at)) && msOf(entry.at) <= scope.frame.asOf)
    .sort((a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq);
}

/** @param beyond see `readingDoc.beyond` */
export function readingDocOf(scope: DayScope, look: Look, beyond: boolean | null): ReadingDoc {
  const entry = scope.entries.get(look.id);
  const body = entry?.kind === 'reading' ? entry.body : null;
  return {
    id: look.id,
    seq: look.seq,
    at: iso(scope, look.at),
    entered_at: iso(scope, look.enteredAt),
    by: look.by,
    known: entry?.known ?? 'tap',
    batch: look.batch,
    piece: look.piece,
    equipment: look.equipment,
    spot: look.spot,
    typed: look.typed,
    value: look.value,
    unit: look.unit,
    thermometer: look.probe,
    held_s: look.held_s,
    source: look.source,
    correction: look.correction,
    round: look.round,
    late: look.late,
    late_reason: body?.late_reason ?? null,
    suspect: look.suspect,
    beyond,
    amended: look.amended && {
      field: look.amended.field,
      from: look.amended.from,
      to: look.amended.to,
      reason: look.amended.reason,
      by: look.amended.by,
      at: iso(scope, look.amended.at),
    },
  };
}
