import type { Check } from '#lib/fold/book.ts';
import type { CanonicalDay, ReadingDoc, ThermometerDoc } from './day-schema.ts';
import { type DayScope, inDay, iso } from './day-scope.ts';

/**
 * The thermometers that were read or checked in the day, with the last check before it and the first after it: a
 * later check that fails makes earlier readings suspect, so the sheet says whether there was one.
 */
export function thermometerDocs(scope: DayScope, readings: readonly ReadingDoc[]): ThermometerDoc[] {
  const checks = [...scope.book.checks].sort((a, b) => a.at - b.at || a.entry.seq - b.entry.seq);
  return [...scope.book.kitchen.probes.values()]
    .map((probe): ThermometerDoc => {
      const mine = checks.filter((check) => check.probe === probe.probe);
      const read = readings.filter((reading) => reading.thermometer === probe.probe);
      const before = mine.filter((check) => check.at < scope.frame.from).at(-1);
      const after = mine.find((check) => check.at >= scope.frame.to);
      return {
        id: probe.probe,
        name: probe.name,
        colour: probe.colour,
        type: probe.type,
        unit: probe.unit,
        check_before: before ? checkDoc(scope, before) : null,
        checks: mine.filter((check) => inDay(scope, check.at)).map((check) => checkDoc(scope, check)),
        check_after: after ? checkDoc(scope, after) : null,
        readings: read.length,
        suspect: read.filter((reading) => reading.suspect).map((reading) => reading.id),
      };
    })
    .filter((probe) => probe.readings > 0 || probe.checks.length > 0)
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1));
}

const checkDoc = (scope: DayScope, check: Check): CanonicalDay['thermometers'][number]['checks'][number] => ({
  id: check.entry.id,
  at: iso(scope, check.at),
  by: check.entry.by,
  bath: check.entry.body.bath,
  typed: check.entry.body.typed,
  unit: check.entry.body.unit,
  expected: check.entry.body.expected,
  verdict: check.verdict,
  section: check.section,
  reads: check.reads,
  note: check.entry.body.note,
});
