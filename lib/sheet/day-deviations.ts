import type { Deviation } from '#lib/fold/book.ts';
import type { EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { DeviationDoc } from './day-schema.ts';
import { type DayScope, inDay, iso, isoOrNull, isoText, readingDocOf } from './day-scope.ts';

/**
 * Deviations that were found in the day, or were still open in it, in the order in which they were found. When it
 * was out of control comes from the day's own book; cause, actions, decisions and ends from all that is known.
 */
export function deviationDocs(scope: DayScope): DeviationDoc[] {
  return scope.book.deviations
    .filter((deviation) => deviation.foundAt < scope.frame.to && openInDay(scope, deviation))
    .sort((a, b) => a.foundAt - b.foundAt || (a.ref < b.ref ? -1 : 1))
    .map((deviation) => deviationDoc(scope, deviation));
}

function openInDay(scope: DayScope, deviation: Deviation): boolean {
  if (inDay(scope, deviation.foundAt)) return true;
  if (deviation.state !== 'closed') return true;
  return [...deviation.actions, ...deviation.decisions].some((entry) => inDay(scope, msOf(entry.at)));
}

function deviationDoc(scope: DayScope, day: Deviation): DeviationDoc {
  const hand = day.entry;
  const actions = inOrder(day.actions);
  return {
    ref: day.ref,
    opened: day.opened,
    by: hand?.by ?? null,
    batch: day.batch,
    pieces: day.pieces,
    step: day.step,
    stage: day.stage,
    run: day.run,
    equipment: day.equipment,
    thermometer: day.probe,
    section: day.section,
    found_at: iso(scope, day.foundAt),
    found: day.found && readingDocOf(scope, day.found, true),
    last_good: day.lastGood && readingDocOf(scope, day.lastGood, false),
    since: isoOrNull(scope, day.since),
    since_basis: hand?.body.since_basis ?? null,
    put_right_at: isoOrNull(scope, day.untilAt),
    out_at_least_min: day.outShortestMin,
    out_at_most_min: day.outLongestMin,
    text: hand?.body.text ?? null,
    lang: hand?.body.lang ?? null,
    causes: actions.flatMap((entry) => entry.body.cause || []),
    actions: actions.map((entry) => actionDoc(scope, entry)),
    decisions: inOrder(day.decisions).map((entry) => decisionDoc(scope, entry)),
    ends: day.ends.map((end) => ({
      batch: end.batch,
      piece: end.piece,
      end: end.end,
      at: isoOrNull(scope, end.at),
      by: end.by,
    })),
    unconfirmed: [...day.unconfirmed].sort(),
    state: day.state,
  };
}

const inOrder = <T extends { at: string; seq: number }>(entries: readonly T[]): T[] =>
  [...entries].sort((a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq);

const actionDoc = (
  scope: DayScope,
  entry: EntryOf<'corrective_action'>,
): DeviationDoc['actions'][number] => ({
  id: entry.id,
  at: isoText(scope, entry.at),
  entered_at: isoText(scope, entry.entered_at),
  by: entry.by,
  action: entry.body.action,
  pieces: entry.body.pieces,
  decided_by: entry.body.decided_by,
  decided_via: entry.body.decided_via,
  decided_words: entry.body.decided_words,
  condition: entry.body.condition,
  disposition: entry.body.disposition,
  amount: entry.body.amount,
  cause: entry.body.cause,
  text: entry.body.text,
  lang: entry.body.lang,
});

const decisionDoc = (scope: DayScope, entry: EntryOf<'decision'>): DeviationDoc['decisions'][number] => ({
  id: entry.id,
  at: isoText(scope, entry.at),
  entered_at: isoText(scope, entry.entered_at),
  by: entry.by,
  decision: entry.body.decision,
  pieces: entry.body.pieces,
  confirms: entry.body.confirms,
  decided_by: entry.body.decided_by,
  decided_via: entry.body.decided_via,
  reason: entry.body.reason,
});
