import type { EntryOf } from '#shared/entries/entry.ts';
import type { DeviationDoc } from './day-schema.ts';
import type { SheetNames } from './sheet-names.ts';

/**
 * Signatures that stand in the book when a sheet is read. The canonical day leaves them out, for signing must not
 * change what is signed; but whoever signs with a decision on a deviation confirms what they had said by phone.
 */
export type Confirming = readonly EntryOf<'signature'>[];

/** What is still unconfirmed in the day's own text, and with which signature its maker has confirmed it since. */
export function confirmationWords(
  names: SheetNames,
  deviation: DeviationDoc,
  confirming: Confirming,
): string[] {
  const { say } = names;
  const makers = new Map(
    [...deviation.actions, ...deviation.decisions].map((one) => [one.id, one.decided_by]),
  );
  const by = Map.groupBy(deviation.unconfirmed, (id) =>
    confirming.find(
      (entry) =>
        entry.by === makers.get(id) &&
        entry.body.open_items.some(({ ref }) => ref === id || ref === deviation.ref),
    ),
  );
  return [...by].map(([entry, ids]) =>
    entry === undefined
      ? say('sheet.unconfirmed', { count: ids.length })
      : say('sheet.confirmed_signing', {
          count: ids.length,
          hand: names.hand(entry.by),
          at: names.moment(entry.at),
        }),
  );
}
