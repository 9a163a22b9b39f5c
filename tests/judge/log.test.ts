import { describe, expect, it, test } from 'vitest';
import { judgeLog, type LogAnswer, logStatus } from '#lib/judge/log.ts';
import { readLog } from '#lib/judge/log-rows.ts';
import { at, fda } from './records.ts';

const header = 'batch,food,step,time,value,unit,spot,piece,probe,held_s,equipment';
const log = (...lines: string[]): string => [header, ...lines, ''].join('\n');
const ask = { profile: fda, planIntervalMin: null, asOf: null, ended: false };
const judged = (text: string, more: Partial<typeof ask> | { asOf: string } = {}): LogAnswer =>
  judgeLog(text, { ...ask, ...more } as typeof ask);
/** "12:30" on the invented day, as a log writes it. */
const row = (
  batch: string,
  step: string,
  clock: string,
  value: number | string,
  rest = 'degF,core,,,,',
): string => `${batch},beef_whole,${step},2026-05-08T${clock}:00-05:00,${value},${rest}`;
const problems = (text: string) =>
  readLog(text).problems.map(({ line, column, problem }) => [line, column, problem]);

describe('every problem of every line is named, in order of line and headings', () => {
  test.each([
    ['an empty file', '', [[1, 'batch', 'empty_file']]],
    ['a file of blank lines', '\n\n  \n', [[1, 'batch', 'empty_file']]],
    ['headings alone', header, [[1, 'batch', 'no_rows']]],
    ['a missing heading', 'batch,food,step,time,value\na,b,rest,x,1', [[1, 'unit', 'header_missing']]],
    ['an unknown heading', `${header},colour\na`, [[1, 'colour', 'header_unknown']]],
    ['a heading twice', 'batch,food,step,time,value,unit,unit\na', [[1, 'unit', 'header_twice']]],
    ['a blank value', log(row('a', 'rest', '12:00', '')), [[2, 'value', 'blank']]],
    ['a value in words', log(row('a', 'rest', '12:00', 'hot')), [[2, 'value', 'value']]],
    ['an exponent', log(row('a', 'rest', '12:00', '1e2')), [[2, 'value', 'value']]],
    ['a time without its offset', log('a,b,rest,2026-05-08T12:00:00,150,degF'), [[2, 'time', 'time']]],
    ['a day that is none', log('a,b,rest,2026-02-30T12:00:00Z,150,degF'), [[2, 'time', 'time']]],
    ['a unit of its own', log('a,b,rest,2026-05-08T12:00:00Z,150,F'), [[2, 'unit', 'unit']]],
    ['an unknown step', log(row('a', 'hold', '12:00', 150)), [[2, 'step', 'step']]],
    ['a step that no log has', log(row('a', 'gone', '12:00', 150)), [[2, 'step', 'step']]],
    ['an unknown spot', log(row('a', 'rest', '12:00', 150, 'degF,middle,,,,')), [[2, 'spot', 'spot']]],
    ['piece nought', log(row('a', 'rest', '12:00', 150, 'degF,core,0,,,')), [[2, 'piece', 'piece']]],
    [
      'seconds below nought',
      log(row('a', 'rest', '12:00', 150, 'degF,core,,,-1,')),
      [[2, 'held_s', 'held_s']],
    ],
    [
      'too many values',
      log(row('a', 'rest', '12:00', 150, 'degF,core,,,,,x')),
      [[2, 'equipment', 'too_many_fields']],
    ],
    [
      'another food in a batch',
      log(row('a', 'rest', '12:00', 150), 'a,fish,rest,2026-05-08T17:00:00Z,150,degF'),
      [[3, 'food', 'food_changed']],
    ],
    [
      'a quote that is never closed',
      log(row('a', 'rest', '12:00', 150), '"a,b,rest,x,1,degF', row('a', 'rest', '12:10', '')),
      [
        [3, 'batch', 'quote_open'],
        [4, 'value', 'blank'],
      ],
    ],
    [
      'several of one line, and of lines after blank ones',
      log(',b,hold,noon,,K', '', row('a', 'rest', '12:00', '')),
      [
        [2, 'batch', 'blank'],
        [2, 'step', 'step'],
        [2, 'time', 'time'],
        [2, 'value', 'blank'],
        [2, 'unit', 'unit'],
        [4, 'value', 'blank'],
      ],
    ],
  ] as const)('%s', (_, text, expected) => {
    expect(problems(text)).toEqual(expected);
    const answer = judged(text);
    expect(answer.batches).toEqual([]);
    expect(logStatus(answer)).toBe(3);
  });
  it('reads marks of a spreadsheet, other line ends, quotes, and columns in another order', () => {
    const text =
      '\uFEFFfood,batch,time,step,unit,value\r\n"ribs, smoked",a,2026-05-08T12:00:00-05:00,rest,degF, \u22121.5 \r\n';
    expect(readLog(text)).toMatchObject({
      problems: [],
      rows: [{ food: 'ribs, smoked', value: -1.5, line: 2 }],
    });
  });
});

const stepsOf = (answer: LogAnswer, place = 0) => answer.batches[place]?.steps ?? [];

describe('steps are the consecutive runs of a batch by time', () => {
  const text = log(
    row('a', 'cooling', '15:00', 60),
    row('a', 'reheat', '14:00', 166, 'degF,core,,,15,'),
    row('a', 'cooling', '12:00', 140),
    row('a', 'cooling', '13:00', 100),
    row('b', 'service', '12:30', 150),
  );
  it('whatever the order of the lines; a cooling, a reheat and a cooling are three', () => {
    const answer = judged(text);
    expect(answer.batches.map(({ batch }) => batch)).toEqual(['a', 'b']);
    expect(stepsOf(answer).map(({ step }) => step)).toEqual(['cooling', 'reheat', 'cooling']);
  });
  it('one that another follows ends with the next one’s first reading, the last goes on', () => {
    expect(stepsOf(judged(text)).map(({ end }) => end)).toEqual([at(120), at(180), null]);
    expect(stepsOf(judged(text, { ended: true })).map(({ end }) => end)).toEqual([at(120), at(180), at(180)]);
  });
  it('a cooling sees each piece’s last food reading before it, and no earlier one', () => {
    const [, , second] = stepsOf(judged(text));
    expect(second?.stages.stage_1).toMatchObject({ verdict: 'kept', longest_min: 60, rests_on: [2, 3] });
  });
  it('a moment later than as_of is not seen', () => {
    const answer = judged(text, { asOf: '2026-05-08T13:30:00-05:00' });
    expect(stepsOf(answer).map(({ step, end }) => [step, end])).toEqual([['cooling', null]]);
    expect(stepsOf(answer)[0]?.stages.stage_1).toMatchObject({ open: true, remaining_min: 30 });
  });
  it('as_of before the first reading is a problem, for nothing was read yet', () => {
    expect(judged(text, { asOf: '2026-05-08T11:00:00-05:00' }).problems).toMatchObject([
      { problem: 'before_log' },
    ]);
  });
  it('lines of one moment make no steps of their own', () => {
    const tied = log(
      row('a', 'cooling', '13:00', 140),
      row('a', 'hot_hold', '13:00', 150),
      row('a', 'hot_hold', '12:00', 150),
      row('a', 'cooling', '14:00', 60),
    );
    expect(stepsOf(judged(tied)).map(({ step }) => step)).toEqual(['hot_hold', 'cooling']);
  });
});

describe('a step without a rule has no stages, and says why', () => {
  test.each([['cutting', 'preparation']])('%s: %s', (step, reason) => {
    const answer = judged(log(row('a', step, '12:00', 150)), { ended: true });
    expect(stepsOf(answer)).toMatchObject([{ step, stages: {}, reason }]);
    expect(logStatus(answer)).toBe(2);
  });
  test.each(['rest', 'hot_hold', 'service', 'transport'])('%s is judged as a hot hold', (step) => {
    const answer = judged(log(row('a', step, '12:00', 134.9, 'degF,edge,,,,')));
    expect(stepsOf(answer)[0]?.stages.at_readings).toMatchObject({
      verdict: 'broken',
      section: '3-501.16(A)(1)',
    });
  });
});

describe('the steps of cold food, of a cook and of time control are judged by their rules', () => {
  const only = (step: string, value: number, spot: string) =>
    stepsOf(judged(log(row('a', step, '12:00', value, `degF,${spot},,,,`)), { ended: true }))[0]?.stages;
  test.each([
    ['cold_hold', 41, 'warmest', 'at_readings', 'kept', '3-501.16(A)(2)'],
    ['cold_hold', 41.1, 'warmest', 'at_readings', 'broken', '3-501.16(A)(2)'],
    ['cook', 144.9, 'core', 'temperature', 'broken', '3-401.11(A)(1)'],
    ['time_control', 135, 'edge', 'start', 'kept', '3-501.19(B)'],
    ['time_control', 134.9, 'edge', 'start', 'broken', '3-501.19(B)'],
  ] as const)('%s at %s °F, %s: %s is %s', (step, value, spot, name, verdict, section) => {
    expect(only(step, value, spot)?.[name]).toMatchObject({ verdict, section });
  });
  it('food that went on after time control was not gone, and nobody knows of a procedure', () => {
    const text = log(row('a', 'time_control', '12:00', 150), row('a', 'hot_hold', '13:00', 150));
    const [out] = stepsOf(judged(text, { asOf: '2026-05-08T16:00:01-05:00' }));
    expect(out?.stages.time?.verdict).toBe('broken');
    expect(out?.stages.procedure?.verdict).toBe('not_shown');
  });
  test.each(['rest', 'service', 'transport'])('%s after the cold is judged as a cold hold', (step) => {
    const text = log(
      row('a', 'cold_hold', '12:00', 38, 'degF,warmest,,,,'),
      row('a', 'cutting', '12:30', 38, 'degF,warmest,,,,'),
      row('a', step, '13:00', 41.1, 'degF,warmest,,,,'),
    );
    expect(stepsOf(judged(text))[2]?.stages.at_readings).toMatchObject({
      verdict: 'broken',
      section: '3-501.16(A)(2)',
    });
  });
});

describe('what a log cannot say is not taken from it', () => {
  it('the roast allowance', () => {
    const text = log('a,intact_roast,hot_hold,2026-05-08T12:00:00-05:00,132,degF,edge');
    expect(stepsOf(judged(text))[0]?.stages.at_readings).toMatchObject({
      verdict: 'broken',
      limit: { value: 135 },
    });
  });
  it('the class of a food with a name of its own', () => {
    const text = log('a,Grandma’s beans,hot_hold,2026-05-08T12:00:00-05:00,135,degF,edge');
    expect(judged(text).batches[0]?.food).toBe('Grandma’s beans');
    expect(stepsOf(judged(text))[0]?.stages.at_readings?.verdict).toBe('kept');
  });
  it('the house plan, unless an interval is asked', () => {
    const text = log(row('a', 'rest', '12:00', 150), row('a', 'rest', '14:01', 150));
    expect(stepsOf(judged(text))[0]?.stages.house_plan_interval).toBeUndefined();
    const planned = judged(text, { planIntervalMin: 120 } as never);
    expect(stepsOf(planned)[0]?.stages.house_plan_interval?.verdict).toBe('broken');
    expect(logStatus(planned)).toBe(1);
  });
});

describe('the exit status', () => {
  const kept = row('a', 'rest', '12:00', 150, 'degF,edge,,,,');
  test.each([
    ['every rule kept and every step ended', log(kept), true, 0],
    ['a hold that goes on is open', log(kept), false, 2],
    ['something not shown', log(row('a', 'cooling', '12:00', 150)), true, 2],
    [
      'something broken, beside something not shown',
      log(kept, row('b', 'rest', '12:00', 120), row('c', 'cook', '12:00', 9)),
      true,
      1,
    ],
    [
      'between the readings nobody looked, which counts for nothing',
      log(kept, row('a', 'rest', '18:00', 150, 'degF,edge,,,,')),
      true,
      0,
    ],
  ])('%s: %s', (_, text, ended, status) => {
    expect(logStatus(judged(text, { ended }))).toBe(status);
  });
});
