import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { minutesBetween, msOf } from '#shared/time.ts';
import type { CanonicalDay, RoundDoc } from './day-schema.ts';
import { type DayScope, inDay, iso, isoText, ofDay } from './day-scope.ts';

/** Rounds planned for or walked in the day; of several entries of one round the last says what came of it. */
export function roundDocs(scope: DayScope): RoundDoc[] {
  const last = new Map<string, EntryOf<'round'>>();
  for (const entry of [...scope.entries.values()].filter((e) => e.kind === 'round').sort(bySeq)) {
    last.set(entry.body.round, entry);
  }
  return [...last.values()]
    .filter((entry) => inDay(scope, msOf(entry.body.planned_at ?? entry.at)))
    .sort((a, b) => msOf(a.body.planned_at ?? a.at) - msOf(b.body.planned_at ?? b.at) || a.seq - b.seq)
    .map((entry) => ({
      id: entry.id,
      round: entry.body.round,
      planned_at: entry.body.planned_at && isoText(scope, entry.body.planned_at),
      at: isoText(scope, entry.at),
      entered_at: isoText(scope, entry.entered_at),
      ended_at: entry.body.ended_at && isoText(scope, entry.body.ended_at),
      status: entry.body.status,
      equipment: entry.body.equipment,
      by: entry.by,
      reason: entry.body.reason,
      note: entry.body.note,
    }));
}

const bySeq = (a: Entry, b: Entry): number => a.seq - b.seq;

/** Stretches without power that touch the day; `on_at` null = it had not come back by `as_of`. */
export function powerCutDocs(scope: DayScope): CanonicalDay['power_cuts'] {
  const cuts = [...scope.book.off].flatMap(([equipment, all]) => all.map((cut) => ({ equipment, ...cut })));
  return cuts
    .filter((cut) => cut.at < scope.frame.to && (cut.until === null || cut.until >= scope.frame.from))
    .filter((cut) => cut.at <= scope.frame.asOf)
    .sort((a, b) => a.at - b.at || (a.equipment < b.equipment ? -1 : 1))
    .map((cut) => {
      const entry = [...scope.entries.values()].find(
        (e): e is EntryOf<'equipment_off'> =>
          e.kind === 'equipment_off' && e.body.equipment === cut.equipment && msOf(e.at) === cut.at,
      );
      return {
        equipment: cut.equipment,
        off_at: iso(scope, cut.at),
        on_at: cut.until === null ? null : iso(scope, cut.until),
        by: entry?.by ?? null,
        reason: cut.reason,
        since_basis: entry?.body.since_basis ?? null,
        text: entry?.body.text ?? null,
      };
    });
}

export const noteDocs = (scope: DayScope): CanonicalDay['notes'] =>
  ofDay(scope, 'note').map((entry) => ({
    id: entry.id,
    at: isoText(scope, entry.at),
    entered_at: isoText(scope, entry.entered_at),
    by: entry.by,
    batch: entry.body.batch,
    piece: entry.body.piece,
    equipment: entry.body.equipment,
    thermometer: entry.body.probe,
    could_not: entry.body.could_not,
    text: entry.body.text,
    lang: entry.body.lang,
  }));

export const handoverDocs = (scope: DayScope): CanonicalDay['handovers'] =>
  ofDay(scope, 'handover').map((entry) => ({
    id: entry.id,
    at: isoText(scope, entry.at),
    by: entry.by,
    from: entry.body.from,
    to: entry.body.to,
    open_items: entry.body.open_items,
    text: entry.body.text,
    lang: entry.body.lang,
  }));

/** Kinds that tell of the day itself; a signature or a set-up typed later is not a late look. */
const told = new Set<Entry['kind']>([
  'batch',
  'step',
  'reading',
  'probe_check',
  'round',
  'equipment_off',
  'equipment_on',
  'deviation',
  'corrective_action',
  'note',
]);

/** Entries of the day that were typed more than the site's `late_after_min` after what they tell of. */
export function lateDocs(scope: DayScope): CanonicalDay['late'] {
  const most = scope.frame.site.body.late_after_min;
  return [...scope.entries.values()]
    .filter((entry) => told.has(entry.kind) && inDay(scope, msOf(entry.at)))
    .filter((entry) => minutesBetween(msOf(entry.at), msOf(entry.entered_at)) > most)
    .sort((a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq)
    .map((entry) => ({
      id: entry.id,
      seq: entry.seq,
      kind: entry.kind,
      at: isoText(scope, entry.at),
      entered_at: isoText(scope, entry.entered_at),
      by: entry.by,
      reason: entry.kind === 'reading' ? entry.body.late_reason : null,
    }));
}

/** Corrections of entries that tell of the day, whenever they were made, and those made in the day. */
export function amendmentDocs(scope: DayScope): CanonicalDay['amendments'] {
  return [...scope.entries.values()]
    .filter((entry) => entry.kind === 'amendment')
    .filter((entry) => {
      const target = scope.entries.get(entry.body.target);
      return inDay(scope, msOf(target?.at ?? entry.at));
    })
    .sort((a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq)
    .map((entry) => {
      const target = scope.entries.get(entry.body.target);
      return {
        id: entry.id,
        seq: entry.seq,
        at: isoText(scope, entry.at),
        by: entry.by,
        target: entry.body.target,
        target_kind: target?.kind ?? null,
        target_at: target ? isoText(scope, target.at) : null,
        field: entry.body.field,
        from: entry.body.from,
        to: entry.body.to,
        reason: entry.body.reason,
      };
    });
}
