import { describe, expect, test } from 'vitest';
import { judgeLog, logStatus } from '#lib/judge/log.ts';
import { fda } from './records.ts';

// 3-501.17(A): 7 days, the first one counted: of 16 October the last day is the 22nd. Days by the offset in the log.

const header = 'batch,food,step,time,value,unit,spot,day_one';
const cold = (day: number, value = 39, dayOne = '', clock = '12:00'): string =>
  `b,plant,cold_hold,2026-10-${day}T${clock}:00-05:00,${value},degF,warmest,${dayOne}`;
const cook = 'b,plant,cook,2026-10-16T09:00:00-05:00,200,degF,core,';

function mark(lines: string[], more: { asOf?: string; ended?: boolean } = {}) {
  const text = [header, ...lines].join('\n');
  const ask = { profile: fda, planIntervalMin: null, asOf: more.asOf ?? null, ended: more.ended ?? false };
  const answer = judgeLog(text, ask);
  const stage = answer.batches[0]?.steps.at(-1)?.stages.date_mark;
  const told = stage && [stage.verdict, stage.last_day?.slice(5), ...stage.reasons].join(' ');
  return { told, stage, status: logStatus(answer), problems: answer.problems };
}

describe('the date mark of a log', () => {
  test('counts from the day that the log shows it cooked', () => {
    expect(mark([cook, cold(16), cold(22)]).told).toBe('kept 10-22');
    expect(mark([cook, cold(16), cold(22)], { ended: true }).status).toBe(0);
  });
  test('is of the local day, not of the one in UTC', () => {
    expect(mark([cook, cold(16), cold(22, 39, '', '23:59')]).told).toBe('kept 10-22');
  });
  test('past its last day it is not shown while it may have been frozen, and broken by a look on each day', () => {
    expect(mark([cook, cold(16), cold(23)]).told).toBe('not_shown 10-22 brackets_too_wide');
    const daily = [16, 17, 18, 19, 20, 21, 22, 23].map((day) => cold(day));
    expect(mark([cook, ...daily]).told).toBe('broken 10-22');
    expect(mark([cook, ...daily]).status).toBe(1);
    // Seven days of looks are seven days: nothing is past.
    expect(mark([cook, ...daily.slice(0, 7)]).told).toBe('kept 10-22');
    // On the 20th it was read at 30 °F: that day it may have been frozen.
    expect(mark([cook, ...daily.map((line, n) => (n === 4 ? cold(20, 30) : line))]).told).toBe(
      'not_shown 10-22 brackets_too_wide',
    );
  });
  test('broken names the lines of the looks that decide', () => {
    const daily = [16, 17, 18, 19, 20, 21, 22, 23].map((day) => cold(day));
    expect(mark([cook, ...daily]).stage?.rests_on).toEqual([4, 5, 6, 7, 8, 9, 10]);
  });
  test('counts from the day written on the food, unless the log itself shows the food older', () => {
    expect(mark([cold(18, 39, '2026-10-16'), cold(22)]).told).toBe('kept 10-22');
    expect(mark([cook, cold(16, 39, '2026-10-20'), cold(22)]).told).toBe('kept 10-22');
    expect(mark([cold(18, 39, '2026-10-20'), cold(19)]).told).toBe('not_shown 10-24 start_unknown');
  });
  test('says nothing where the log neither names a day nor shows a cook', () => {
    expect(mark([cold(18), cold(30)]).told).toBeUndefined();
  });
  test('a cook over midnight was made on one of two days: both are counted', () => {
    const night = 'b,plant,cook,2026-10-15T20:00:00-05:00,120,degF,core,';
    expect(mark([night, cold(16), cold(21)]).told).toBe('kept 10-21');
    expect(mark([night, cold(16), cold(22)]).told).toBe('not_shown 10-21 disputed');
  });
  test('what is not seen yet names no day', () => {
    const asOf = '2026-10-18T12:30:00-05:00';
    expect(mark([cold(18), cold(19, 39, '2026-10-16')], { asOf }).told).toBeUndefined();
  });
  test('a day that is no calendar day is refused with its line', () => {
    expect(mark([cold(18, 39, '2026-13-40')]).problems).toMatchObject([{ line: 2, column: 'day_one' }]);
  });
});
