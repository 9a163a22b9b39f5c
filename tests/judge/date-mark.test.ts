import { describe, expect, test } from 'vitest';
import { type DateMarked, dateMark } from '#lib/judge/date-mark.ts';
import { fda } from './records.ts';

const marked = (as_of_date: string, more: Omit<DateMarked, 'as_of_date'>) => {
  const { verdict, last_day, reasons } = dateMark({ as_of_date, ...more }, fda);
  return [verdict, last_day, ...reasons];
};

describe('seven days, the day of preparation being day 1 (3-501.17)', () => {
  test.each([
    ['2026-05-07', 'kept'],
    ['2026-05-08', 'broken'],
  ])('prepared on the 1st, on %s: %s', (day, verdict) => {
    expect(marked(day, { prepared_on: '2026-05-01' })).toEqual([verdict, '2026-05-07']);
  });
  test('over the end of a year and a leap day', () => {
    expect(marked('2027-01-03', { prepared_on: '2026-12-28' })).toEqual(['kept', '2027-01-03']);
    expect(marked('2028-03-03', { opened_on: '2028-02-26' })).toEqual(['kept', '2028-03-03']);
  });
  test('over the night on which clocks change: the count is of dates', () => {
    expect(marked('2026-03-11', { prepared_on: '2026-03-05' })).toEqual(['kept', '2026-03-11']);
  });
  test('nobody noted a day', () => {
    expect(marked('2026-05-08', { prepared_on: null })).toEqual(['not_shown', null, 'start_unknown']);
  });
});

describe('days in the freezer', () => {
  const frozen = (from: string, to: string | null) => ({
    prepared_on: '2026-10-01',
    frozen: [[from, to]] as [string, string | null][],
  });
  test('the day in and the day out count; where only the other count allows the day, nobody knows', () => {
    const mark = frozen('2026-10-03', '2026-10-10');
    expect(marked('2026-10-13', mark)).toEqual(['kept', '2026-10-13']);
    expect(marked('2026-10-14', mark)).toEqual(['not_shown', '2026-10-13', 'disputed']);
    expect(marked('2026-10-15', mark)).toEqual(['broken', '2026-10-13']);
  });
  test('in and out on one day, or on the next: no day is gained by the stricter count', () => {
    expect(marked('2026-10-08', frozen('2026-10-03', '2026-10-03'))).toEqual(['broken', '2026-10-07']);
    expect(marked('2026-10-08', frozen('2026-10-03', '2026-10-04'))).toEqual([
      'not_shown',
      '2026-10-07',
      'disputed',
    ]);
  });
  test('twice: each stop counts, whatever order they are named in, and days named twice stop once', () => {
    const twice = (...stops: [string, string][]) =>
      marked('2026-10-01', { prepared_on: '2026-10-01', frozen: stops })[1];
    const [a, b] = [
      ['2026-10-02', '2026-10-05'],
      ['2026-10-06', '2026-10-09'],
    ] as [string, string][];
    if (a === undefined || b === undefined) throw new Error('no stops');
    // 1, 2, 5, 6, 9, 10, 11 October are the seven.
    expect(twice(a, b)).toBe('2026-10-11');
    expect(twice(b, a)).toBe('2026-10-11');
    expect(twice(a, a)).toBe('2026-10-09');
  });
  test('still in it, put there in time: no last day yet', () => {
    expect(marked('2027-06-30', frozen('2026-10-07', null))).toEqual(['kept', null]);
  });
  test('put there when it was over already: the freezer mends nothing', () => {
    expect(marked('2026-10-20', frozen('2026-10-08', null))).toEqual(['broken', '2026-10-07']);
  });
});

describe('combined food', () => {
  test('takes the earliest date of all', () => {
    const more = { prepared_on: '2026-05-10', combined_with: ['2026-05-07', '2026-05-09'] };
    expect(marked('2026-05-13', more)).toEqual(['kept', '2026-05-13']);
    expect(marked('2026-05-14', more)).toEqual(['broken', '2026-05-13']);
  });
});

test('a profile without a count of days says so', () => {
  const without = { ...fda, figures: { ...fda.figures, date_mark: null } };
  expect(dateMark({ prepared_on: '2026-05-01', as_of_date: '2026-06-01' }, without)).toMatchObject({
    verdict: 'not_applicable',
    reasons: ['no_figure'],
  });
});
