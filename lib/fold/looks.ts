import type { Body, Entry, EntryOf } from '#shared/entries/entry.ts';
import { minutesBetween, msOf } from '#shared/time.ts';
import type { Unit } from '#shared/units.ts';
import type { Kitchen, Look } from './book.ts';
import { ofKind, whenOf } from './order.ts';

const lateAfterMin = 15; // until the site says otherwise (its own `late_after_min`): common practice

/** A probe's accuracy in the unit of the reading: degrees of difference, so only the size of a degree changes. */
function accuracyIn(probe: Body<'probe'> | undefined, unit: Unit): number | null {
  if (!probe || probe.accuracy === null) return null;
  if (probe.unit === unit) return probe.accuracy;
  return unit === 'degF' ? (probe.accuracy * 9) / 5 : (probe.accuracy * 5) / 9;
}

function amendedBy(amendments: readonly EntryOf<'amendment'>[] | undefined): Look['amended'] {
  const last = amendments?.at(-1);
  if (!last) return null;
  const { from, to, field, reason } = last.body;
  return { from, to, field, reason, by: last.by, at: msOf(last.at) };
}

/**
 * Every reading that is seen, in order, with amendments applied and suspect marks set.
 * @param entries in order, amended
 * @param suspect ids of suspect readings
 */
export function foldLooks(
  entries: readonly Entry[],
  kitchen: Kitchen,
  amendments: ReadonlyMap<string, EntryOf<'amendment'>[]>,
  suspect: ReadonlySet<string>,
): Look[] {
  const late = kitchen.site?.late_after_min ?? lateAfterMin;
  return ofKind(entries, 'reading').map((entry) => {
    const { id, seq, entered_at, by, body } = entry;
    const when = whenOf(entry);
    const enteredAt = msOf(entered_at);
    return {
      id,
      seq,
      at: when,
      value: body.value,
      typed: body.typed,
      unit: body.unit,
      spot: body.spot,
      piece: body.piece,
      probe: body.probe,
      held_s: body.held_s,
      source: body.source,
      suspect: suspect.has(id),
      correction: body.correction,
      accuracy: accuracyIn(body.probe === null ? undefined : kitchen.probes.get(body.probe), body.unit),
      batch: body.batch,
      equipment: body.equipment,
      by,
      enteredAt,
      late: minutesBetween(when, enteredAt) > late,
      round: body.round,
      amended: amendedBy(amendments.get(id)),
    };
  });
}

/** A look at food: `air` is of the equipment, never of the food. */
export const isFood = (look: Look): boolean => look.spot !== 'air' && look.batch !== null;
