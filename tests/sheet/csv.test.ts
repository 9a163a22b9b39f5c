import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { type csvColumns, csvOf } from '#lib/sheet/csv.ts';
import { dayOfDemo, friday, readingsOf, saturdayDay } from './demo-day.ts';

type Row = Record<(typeof csvColumns)[number], string>;
const rowsOf = (day: string): Row[] => parse(csvOf(dayOfDemo(day)), { columns: true });

describe('the day as CSV', () => {
  test.each([friday, saturdayDay])(
    '%s: every reading reads back as it stands in the day (demand:48)',
    (day) => {
      const document = dayOfDemo(day);
      const rows = rowsOf(day).filter((row) => row.record === 'reading');
      const thermometer = new Map(document.thermometers.map((one) => [one.id, one.name]));
      const expected = readingsOf(document).map((one) => [
        one.id,
        one.at,
        one.typed,
        String(one.value),
        one.unit,
        one.thermometer === null ? '' : thermometer.get(one.thermometer),
        String(one.suspect),
        String(one.late),
      ]);
      const read = rows.map((row) => [
        row.entry,
        row.at,
        row.typed,
        row.value,
        row.unit,
        row.thermometer,
        row.suspect,
        row.late,
      ]);
      expect(read.sort()).toEqual(expected.sort());
    },
  );

  test('every verdict has its section, and every deviation its state', () => {
    const rows = rowsOf(friday);
    const verdicts = rows.filter((row) => row.record === 'verdict');
    const stages = dayOfDemo(friday).batches.flatMap((batch) =>
      batch.runs.flatMap((run) => Object.values(run.stages)),
    );
    expect(verdicts.map((row) => `${row.verdict} ${row.section}`).sort()).toEqual(
      stages.map((stage) => `${stage.verdict} ${stage.section}`).sort(),
    );
    const deviations = rows.filter((row) => row.record === 'deviation');
    expect(deviations.map((row) => row.state).sort()).toEqual(
      dayOfDemo(friday)
        .deviations.map((one) => one.state)
        .sort(),
    );
  });

  test('words that a spreadsheet would take for a formula do not begin like one', () => {
    const day = dayOfDemo(friday);
    const [round] = day.rounds;
    if (!round) throw new Error('no round');
    const risky = { ...day, rounds: [{ ...round, reason: '=HYPERLINK("x")' }] };
    const rows: Row[] = parse(csvOf(risky), { columns: true });
    expect(rows.find((row) => row.record === 'round')?.words).toMatch(/^'=HYPERLINK/);
  });
});
