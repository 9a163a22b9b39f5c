import { stringify } from 'csv-stringify/sync';
import type { BatchDoc, CanonicalDay, DeviationDoc, ReadingDoc } from './day-schema.ts';
import { stagesInOrder } from './stage-order.ts';

/**
 * Columns of the CSV form: one row a reading, a verdict, a deviation, a thermometer check, a round. What a record
 * has no figure for stays empty. Instants are ISO 8601 with the kitchen's offset, lengths are minutes, names of
 * verdicts and stages are those of the canonical day. `entry` is the id under which the book holds it.
 */
export const csvColumns = [
  'record', // reading, verdict, deviation, check, round
  'day',
  'batch',
  'food',
  'step',
  'pieces',
  'place',
  'at',
  'entered_at',
  'hand',
  'spot',
  'typed',
  'value',
  'unit',
  'thermometer',
  'held_s',
  'late',
  'suspect',
  'beyond',
  'amended_from',
  'stage',
  'verdict',
  'open',
  'section',
  'limit',
  'limit_unit',
  'limit_min',
  'longest_min',
  'shortest_min',
  'reasons',
  'state',
  'words',
  'entry',
  'last_day', // of a date mark
] as const;

type Row = Partial<Record<(typeof csvColumns)[number], string | number | boolean | null>>;

/** The day as CSV (RFC 4180, UTF-8, first line the names of the columns). Made from the canonical day alone. */
export function csvOf(day: CanonicalDay): string {
  const rows = [
    ...day.batches.flatMap((batch) => batchRows(day, batch)),
    ...[...day.air, ...day.loose].map((reading) => readingRow(day, null, null, reading)),
    ...day.deviations.map((deviation) => deviationRow(day, deviation)),
    ...checkRows(day),
    ...roundRows(day),
  ].map((row): Row => ({ day: day.day, ...row }));
  return stringify(rows, {
    header: true,
    columns: csvColumns.map((key) => ({ key })),
    cast: { boolean: (value) => (value ? 'true' : 'false') },
    record_delimiter: '\r\n',
  });
}

const name = (all: readonly { id: string; name: string }[], id: string | null): string =>
  all.find((one) => one.id === id)?.name ?? '';
const hand = (day: CanonicalDay, id: string | null): string =>
  day.people.find((one) => one.id === id)?.initials ?? '';
const numbers = (pieces: readonly number[] | null): string => pieces?.join(' ') ?? '';

/** People's words: a spreadsheet must not take "=…" or "+…" for a formula, so such a text begins with an apostrophe. */
const plain = (words: string | null): string =>
  words !== null && /^[=+\-@\t\r]/.test(words) ? `'${words}` : (words ?? '');

function batchRows(day: CanonicalDay, batch: BatchDoc): Row[] {
  const stepOf = new Map(
    [...batch.runs].reverse().flatMap((run) => run.readings.map((id) => [id, run.step] as const)),
  );
  const readings = batch.readings.map((reading) =>
    readingRow(day, batch, stepOf.get(reading.id) ?? null, reading),
  );
  const verdicts = batch.runs.flatMap((run) =>
    stagesInOrder(run).map(
      ([stage, judged]): Row => ({
        record: 'verdict',
        batch: plain(batch.name),
        food: plain(batch.food?.name ?? null),
        step: run.step,
        pieces: numbers(run.pieces),
        place: plain(name(day.equipment, run.equipment)),
        at: run.start,
        stage,
        verdict: judged.verdict,
        open: judged.open,
        section: judged.section,
        limit: judged.limit?.value ?? null,
        limit_unit: judged.limit?.unit ?? null,
        limit_min: judged.limit_min,
        longest_min: judged.longest_min ?? judged.below_longest_min,
        shortest_min: judged.shortest_min ?? judged.below_shortest_min,
        reasons: judged.reasons.join(' '),
        entry: run.id,
        last_day: judged.last_day ?? null,
      }),
    ),
  );
  return [...readings, ...verdicts];
}

function readingRow(
  day: CanonicalDay,
  batch: BatchDoc | null,
  step: string | null,
  reading: ReadingDoc,
): Row {
  return {
    record: 'reading',
    batch: plain(batch?.name ?? null),
    food: plain(batch?.food?.name ?? null),
    step,
    pieces: reading.piece,
    place: plain(name(day.equipment, reading.equipment)),
    at: reading.at,
    entered_at: reading.entered_at,
    hand: hand(day, reading.by),
    spot: reading.spot,
    typed: reading.typed,
    value: reading.value,
    unit: reading.unit,
    thermometer: plain(name(day.thermometers, reading.thermometer)),
    held_s: reading.held_s,
    late: reading.late,
    suspect: reading.suspect,
    beyond: reading.beyond,
    amended_from: reading.amended?.from ?? null,
    words: plain([reading.late_reason, reading.amended?.reason].filter(Boolean).join(' ')),
    entry: reading.id,
  };
}

const deviationRow = (day: CanonicalDay, one: DeviationDoc): Row => ({
  record: 'deviation',
  batch: plain(name(day.batches, one.batch)),
  step: one.step,
  pieces: numbers(one.pieces),
  place: plain(name(day.equipment, one.equipment)),
  at: one.found_at,
  hand: hand(day, one.by),
  thermometer: plain(name(day.thermometers, one.thermometer)),
  stage: one.stage,
  section: one.section,
  longest_min: one.out_at_most_min,
  shortest_min: one.out_at_least_min,
  state: one.state,
  words: plain(
    [one.text, ...one.causes, ...one.actions.map((action) => action.text)].filter(Boolean).join(' '),
  ),
  entry: one.ref,
});

const checkRows = (day: CanonicalDay): Row[] =>
  day.thermometers.flatMap((one) =>
    [one.check_before, ...one.checks, one.check_after]
      .filter((check) => check !== null)
      .map((check) => ({
        record: 'check',
        at: check.at,
        hand: hand(day, check.by),
        spot: check.bath,
        typed: check.typed,
        unit: check.unit,
        thermometer: plain(one.name),
        limit: check.expected,
        limit_unit: check.unit,
        verdict: check.verdict,
        section: check.section,
        words: plain(check.note),
        entry: check.id,
      })),
  );

const roundRows = (day: CanonicalDay): Row[] =>
  day.rounds.map((round) => ({
    record: 'round',
    at: round.planned_at ?? round.at,
    entered_at: round.entered_at,
    hand: hand(day, round.by),
    state: round.status,
    words: plain([round.reason, round.note].filter(Boolean).join(' ')),
    entry: round.id,
  }));
