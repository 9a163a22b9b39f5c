import { canonicalText } from '#shared/envelope.ts';
import type { BatchDoc, CanonicalDay, DeviationDoc, ReadingDoc } from './day-schema.ts';
import { stagesInOrder } from './stage-order.ts';

/** What changed between two texts of one day. Words: `sheet.change.<key>` with the values. */
export type Change = { key: string; values: Record<string, string | number>; at: string | null };

/**
 * What is different in `after`, named: readings, verdicts, deviations, checks, rounds, notes, corrections. Two days
 * that differ always give at least one change; the same day gives none.
 */
export function differences(before: CanonicalDay, after: CanonicalDay): Change[] {
  if (canonicalText(before) === canonicalText(after)) return [];
  const named = [
    ...readingChanges(before, after),
    ...verdictChanges(before, after),
    ...deviationChanges(before, after),
    ...newEntries(before, after),
  ];
  return named.length > 0 ? named : otherChanges(before, after);
}

const readingsOf = (day: CanonicalDay): Map<string, ReadingDoc> =>
  new Map(
    [...day.batches.flatMap((batch) => batch.readings), ...day.air, ...day.loose].map((one) => [one.id, one]),
  );

const byId = <T extends { id: string }>(all: readonly T[]): Map<string, T> =>
  new Map(all.map((one) => [one.id, one]));
const same = (a: unknown, b: unknown): boolean => canonicalText(a ?? null) === canonicalText(b ?? null);
const batchName = (day: CanonicalDay, id: string | null): string =>
  day.batches.find((one) => one.id === id)?.name ?? '–';
const said = (day: CanonicalDay, one: ReadingDoc): Record<string, string | number> => ({
  batch: batchName(day, one.batch),
  figure: one.typed,
  unit: one.unit,
  time: one.at,
  typed: one.entered_at,
});

function readingChanges(before: CanonicalDay, after: CanonicalDay): Change[] {
  const [was, is] = [readingsOf(before), readingsOf(after)];
  const now = [...is.values()].flatMap((reading): Change[] => {
    const old = was.get(reading.id);
    const change = (key: string, more: Record<string, string> = {}): Change[] => [
      { key, values: { ...said(after, reading), ...more }, at: reading.at },
    ];
    if (!old) return change(reading.late ? 'reading_late' : 'reading_added');
    if (old.typed !== reading.typed || old.unit !== reading.unit)
      return change('reading_corrected', { from: old.typed });
    if (!old.suspect && reading.suspect) return change('reading_suspect');
    if (old.suspect && !reading.suspect) return change('reading_not_suspect');
    return same(old, reading) ? [] : change('reading_changed');
  });
  const gone = [...was.values()]
    .filter((reading) => !is.has(reading.id))
    .map((reading) => ({ key: 'reading_gone', values: said(before, reading), at: reading.at }));
  return [...now, ...gone];
}

type Judged = { batch: BatchDoc; step: string; stage: string; verdict: string; at: string };

const verdictsOf = (day: CanonicalDay): Map<string, Judged> =>
  new Map(
    day.batches.flatMap((batch) =>
      batch.runs.flatMap((run) =>
        stagesInOrder(run).map(([stage, { verdict }]) => [
          `${run.id}/${stage}`,
          { batch, step: run.step, stage, verdict, at: run.start },
        ]),
      ),
    ),
  );

function verdictChanges(before: CanonicalDay, after: CanonicalDay): Change[] {
  const was = verdictsOf(before);
  return [...verdictsOf(after)].flatMap(([key, one]) => {
    const old = was.get(key);
    if (old?.verdict === one.verdict) return [];
    return [
      {
        key: old ? 'verdict_changed' : 'verdict_added',
        values: {
          batch: one.batch.name,
          step: one.step,
          stage: one.stage,
          from: old?.verdict ?? '',
          to: one.verdict,
        },
        at: one.at,
      },
    ];
  });
}

function deviationChanges(before: CanonicalDay, after: CanonicalDay): Change[] {
  const was = new Map(before.deviations.map((one) => [one.ref, one]));
  const said = (one: DeviationDoc): Record<string, string> => ({
    batch: batchName(after, one.batch),
    time: one.found_at,
    state: one.state,
  });
  return after.deviations.flatMap((one): Change[] => {
    const old = was.get(one.ref);
    if (!old) return [{ key: 'deviation_added', values: said(one), at: one.found_at }];
    if (old.state !== one.state) return [{ key: 'deviation_state', values: said(one), at: one.found_at }];
    return same(old, one) ? [] : [{ key: 'deviation_changed', values: said(one), at: one.found_at }];
  });
}

/** Entries of the other kinds that the older text does not have, or has otherwise. */
function newEntries(before: CanonicalDay, after: CanonicalDay): Change[] {
  const lists = ['rounds', 'notes', 'handovers', 'amendments', 'late'] as const;
  const listed = lists.flatMap((list) => {
    const was = byId<{ id: string }>(before[list]);
    return after[list].flatMap((one): Change[] =>
      same(was.get(one.id), one) ? [] : [{ key: `${list}_changed`, values: { time: one.at }, at: one.at }],
    );
  });
  const checks = after.thermometers.flatMap((one): Change[] => {
    const was = before.thermometers.find((each) => each.id === one.id);
    if (same(was?.checks, one.checks) && same(was?.check_after, one.check_after)) return [];
    const last = one.check_after ?? one.checks.at(-1);
    return [
      {
        key: 'check_added',
        values: { thermometer: one.name, verdict: last?.verdict ?? 'kept', time: last?.at ?? after.to },
        at: last?.at ?? null,
      },
    ];
  });
  return [...listed, ...checks];
}

/** A change that has no words of its own is said by the part of the sheet in which it is. */
const otherChanges = (before: CanonicalDay, after: CanonicalDay): Change[] =>
  (Object.keys(after) as (keyof CanonicalDay)[])
    .filter((part) => !same(before[part], after[part]))
    .map((part) => ({ key: 'part_changed', values: { part }, at: null }));
