import type { Look } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { batchDocs, notJudged, notShown } from './day-batches.ts';
import { deviationDocs } from './day-deviations.ts';
import { amendmentDocs, handoverDocs, lateDocs, noteDocs, powerCutDocs, roundDocs } from './day-events.ts';
import { dayFrame } from './day-frame.ts';
import { thermometerDocs } from './day-instruments.ts';
import { looseDocs } from './day-loose.ts';
import { equipmentDocs, peopleDocs } from './day-names.ts';
import { profileDoc } from './day-profile.ts';
import { type CanonicalDay, dayFormat, type ReadingDoc } from './day-schema.ts';
import { type DayScope, inDay, iso, readingDocOf } from './day-scope.ts';

/**
 * The canonical day: what the sheet of one operating day says, from the entries alone. The same entries, in any
 * order, give the same day.
 *
 * Judged as of the day's end; suspect marks, corrections and what became of its deviations come from all entries.
 * A day that is not over at `knownUntil` is judged as of that moment and says `over: false`: it can be read and
 * printed, never signed, because it would say something else an hour later.
 * @param entries the site's ledger
 * @param day local date on which the operating day starts
 * @param options.knownUntil the moment of asking (ms); missing = the day is taken to be over
 * @param options.limits id of another profile than the kitchen's own, for a trial reading: never signed, never stored
 * @returns null when no kitchen was ever set up
 */
export function canonicalDay(
  entries: readonly Entry[],
  day: string,
  options: { knownUntil?: number; limits?: string } = {},
): CanonicalDay | null {
  const frame = dayFrame(entries, day, options.knownUntil);
  if (!frame) return null;
  const { limits } = options;
  // A signature is no part of the day that it covers: with it, signing would change what was signed.
  const told = entries.filter((entry) => entry.kind !== 'signature');
  const scope: DayScope = {
    frame,
    book: foldBook(told, { asOf: frame.asOf, ...(limits === undefined ? {} : { limits }) }),
    entries: new Map(told.map((entry) => [entry.id, entry])),
  };
  const doc = eventsOf(scope);
  return { ...doc, people: peopleDocs(scope, doc), equipment: equipmentDocs(scope, doc) };
}

function eventsOf(scope: DayScope): Omit<CanonicalDay, 'people' | 'equipment'> {
  const { frame } = scope;
  const { name, address, zone, unit, clock, late_after_min } = frame.site.body;
  const batches = batchDocs(scope);
  const air = airDocs(scope);
  const placed = [...batches.flatMap((batch) => batch.readings), ...air];
  const loose = looseDocs(scope, new Set(placed.map((reading) => reading.id)));
  return {
    format: dayFormat,
    site: { id: frame.site.site, name, address, zone, unit, clock, late_after_min },
    day: frame.day,
    from: iso(scope, frame.from),
    to: iso(scope, frame.to),
    as_of: iso(scope, frame.asOf),
    over: frame.over,
    profile: profileDoc(scope),
    thermometers: thermometerDocs(scope, [...placed, ...loose]),
    batches,
    air,
    loose,
    deviations: deviationDocs(scope),
    rounds: roundDocs(scope),
    power_cuts: powerCutDocs(scope),
    notes: noteDocs(scope),
    handovers: handoverDocs(scope),
    late: lateDocs(scope),
    amendments: amendmentDocs(scope),
    not_shown: notShown(batches),
    not_judged: notJudged(batches),
    odd: scope.book.odd
      .filter((odd) => inDay(scope, odd.at))
      .map((odd) => ({ entry: odd.entry, at: iso(scope, odd.at), key: odd.key, values: odd.values }))
      .sort((a, b) => (a.entry + a.key < b.entry + b.key ? -1 : 1)),
  };
}

/** Air readings of equipment, in order of time: they prove nothing about the food. */
const airDocs = (scope: DayScope): ReadingDoc[] =>
  [...scope.book.air.values()]
    .flat()
    .filter((look: Look) => inDay(scope, look.at))
    .sort((a, b) => a.at - b.at || a.seq - b.seq)
    .map((look) => readingDocOf(scope, look, null));
