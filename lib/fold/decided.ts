import type { EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import { mayRelease, roleOf } from './authority.ts';
import type { Kitchen } from './book.ts';

/** What people wrote about deviations, in order. */
export type Written = {
  deviations: EntryOf<'deviation'>[];
  actions: EntryOf<'corrective_action'>[];
  decisions: EntryOf<'decision'>[];
  signatures: EntryOf<'signature'>[];
};

/** Something that ends a piece's deviation: who decided it, when, about which pieces (null = all of the batch). */
export type Ending = {
  entry: string;
  at: number;
  end: 'released' | 'reheated' | 'discarded';
  by: string;
  batch: string | null;
  pieces: number[] | null;
};

/** Batch and pieces that a ref speaks of: a deviation's own, or those that a judge's key names. */
function scopeOf(ref: string, written: Written): { batch: string | null; pieces: number[] | null } {
  const byHand = written.deviations.find(({ id }) => id === ref);
  if (byHand) return { batch: byHand.body.batch, pieces: byHand.body.pieces };
  const [batch, piece] = ref.split('/');
  if (batch === undefined || piece === undefined) return { batch: null, pieces: null };
  const number = Number(piece);
  return { batch, pieces: Number.isInteger(number) && number > 0 ? [number] : null };
}

type Decided = EntryOf<'corrective_action'> | EntryOf<'decision'>;

function endingOf(entry: Decided, end: Ending['end'], written: Written): Ending {
  const scope = scopeOf(entry.body.deviation, written);
  const { batch, pieces } = entry.body;
  const other = batch !== null && batch !== scope.batch;
  return {
    entry: entry.id,
    at: msOf(entry.at),
    end,
    by: entry.body.decided_by,
    batch: batch ?? scope.batch,
    pieces: pieces ?? (other ? null : scope.pieces),
  };
}

/** Everything that people decided which ends a block, by those who may, in order of time. */
export function endingsOf(written: Written, kitchen: Kitchen): Ending[] {
  const may = (person: string): boolean => mayRelease(roleOf(person, kitchen), kitchen);
  const actions = written.actions.flatMap((entry) => {
    if (entry.body.action === 'discard') return [endingOf(entry, 'discarded', written)];
    const done = entry.body.action === 'reheat_done' && may(entry.body.decided_by);
    return done ? [endingOf(entry, 'reheated', written)] : [];
  });
  const decisions = written.decisions.flatMap((entry) => {
    if (entry.body.decision === 'discard') return [endingOf(entry, 'discarded', written)];
    const released = entry.body.decision === 'release' && may(entry.body.decided_by);
    return released ? [endingOf(entry, 'released', written)] : [];
  });
  return [...actions, ...decisions].sort((a, b) => a.at - b.at || (a.entry < b.entry ? -1 : 1));
}

/** Whether an ending speaks of this piece of this batch. */
export const speaksOf = (ending: Ending, batch: string, piece: number | null): boolean =>
  ending.batch === batch && (ending.pieces === null || (piece !== null && ending.pieces.includes(piece)));

/**
 * Entries that wrote down somebody else's decision by phone and which that person has not confirmed since, by
 * their own sign-in: with a `confirm`, or with a signature whose open items name it.
 */
export function unconfirmed(
  refs: readonly string[],
  entries: readonly Decided[],
  written: Written,
): string[] {
  return entries
    .filter(({ by, body }) => body.decided_via === 'phone' && body.decided_by !== by)
    .filter((entry) => {
      const { decided_by: maker } = entry.body;
      const own = written.decisions.some(
        ({ by, known, body }) =>
          body.decision === 'confirm' && body.confirms === entry.id && by === maker && known !== 'tap',
      );
      const signed = written.signatures.some(
        ({ by, body }) =>
          by === maker && body.open_items.some(({ ref }) => ref === entry.id || refs.includes(ref)),
      );
      return !own && !signed;
    })
    .map(({ id }) => id);
}
