import type { Entry } from '#shared/entries/entry.ts';
import { applyAmendments } from './amend.ts';
import type { Batch, Kitchen, Piece } from './book.ts';
import { foldKitchen } from './kitchen.ts';
import { inOrder, ofKind } from './order.ts';
import { foldSteps } from './runs.ts';

/**
 * What must be known to take a draft or refuse it. A whole book is one; `admissionOf` makes one without judging
 * anything, for the moment in which a figure is saved.
 */
export type Admission = {
  kitchen: Kitchen;
  batches: ReadonlyMap<string, Pick<Batch, 'name' | 'count'> & { pieces: Pick<Piece, 'number' | 'end'>[] }>;
  entries: ReadonlyMap<string, Entry>;
};

/**
 * @param entries what is known of the kitchen, in any order: set-up, open batches, the recent hours, and what this
 *   call has written before
 */
export function admissionOf(entries: readonly Entry[]): Admission {
  const ordered = inOrder(entries);
  const now = inOrder(applyAmendments(ordered, Number.POSITIVE_INFINITY).entries);
  const steps = Map.groupBy(ofKind(now, 'step'), ({ body }) => body.batch);
  return {
    kitchen: foldKitchen(now, Number.POSITIVE_INFINITY),
    batches: new Map(
      ofKind(now, 'batch').map(({ body }) => {
        const { pieces, ends } = foldSteps(body.pieces, steps.get(body.batch) ?? []);
        const known = pieces.map((number) => ({ number, end: ends.get(number) ?? null }));
        return [body.batch, { name: body.name, count: body.pieces, pieces: known }];
      }),
    ),
    entries: new Map(ordered.map((entry) => [entry.id, entry])),
  };
}
