import type { EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { Kitchen, Odd } from './book.ts';
import { whenOf } from './order.ts';

type Step = EntryOf<'step'>;

/** Two steps of the same food that were written without knowing of each other: in the order of their times. */
export type Conflict = { entries: readonly [Step, Step]; pieces: number[] | null };

/**
 * Pairs of steps by two devices, each written before its device could know the other's (a phone was without
 * network), that say otherwise about the same pieces: another step, another place, or an end twice. Nothing is
 * overwritten: the later time counts. A pair is settled by a correction of either, or by a later step of the same
 * pieces from somebody who could know both.
 * @param steps one batch's steps that stand, in any order
 * @param corrected whether an entry was corrected
 */
export function conflictsOf(steps: readonly Step[], corrected: (id: string) => boolean): Conflict[] {
  const bySeq = [...steps].sort((a, b) => a.seq - b.seq);
  return bySeq.flatMap((second, n) =>
    bySeq.slice(0, n).flatMap((first): Conflict[] => {
      const pieces = shared(first, second);
      if (pieces === undefined || !isBlind(first, second) || saySame(first, second)) return [];
      if (corrected(first.id) || corrected(second.id)) return [];
      if (bySeq.slice(n + 1).some((later) => settles(later, second, pieces))) return [];
      return [{ entries: whenOf(first) <= whenOf(second) ? [first, second] : [second, first], pieces }];
    }),
  );
}

/** The second was written before the first had reached the book, on another device. */
const isBlind = (first: Step, second: Step): boolean =>
  first.device !== second.device && msOf(second.entered_at) < msOf(first.received_at);

const saySame = ({ body: a }: Step, { body: b }: Step): boolean =>
  a.step === b.step && a.equipment === b.equipment && a.step !== 'gone';

/** The pieces that both name; null = all, where neither names any; undefined = none. */
function shared({ body: a }: Step, { body: b }: Step): number[] | null | undefined {
  if (a.pieces === null || b.pieces === null) return a.pieces ?? b.pieces;
  const both = a.pieces.filter((piece) => b.pieces?.includes(piece));
  return both.length > 0 ? both : undefined;
}

/** Numbers in the book go up, so what came after the second and was written after its receipt knew both. */
function settles(later: Step, second: Step, pieces: number[] | null): boolean {
  if (msOf(later.entered_at) < msOf(second.received_at)) return false;
  return (
    later.body.pieces === null || (pieces?.every((piece) => later.body.pieces?.includes(piece)) ?? false)
  );
}

/** A conflict as what does not fit: under the later of both, with the numbers and hands of both. */
export function oddConflict({ entries: [one, other] }: Conflict, kitchen: Kitchen): Odd {
  const name = ({ by }: Step): string => kitchen.people.get(by)?.name ?? '–';
  const values = { seq: one.seq, hand: name(one), other: other.seq, other_hand: name(other) };
  return { entry: other.id, at: whenOf(other), key: 'steps_crossed', values };
}
