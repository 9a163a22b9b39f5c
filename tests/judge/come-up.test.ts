import { describe, expect, test } from 'vitest';
import { judgeStep } from '#lib/judge/judge.ts';
import type { JudgedReading } from '#lib/judge/record.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { at, fda, reading, record } from './records.ts';

const found = profileIds
  .map((id) => profile(id))
  .find((each) => each !== null && each.figures.come_up !== null);
if (found === undefined || found === null) throw new Error('no profile has a come-up time');
const fsis = found;

const comeUp = (readings: readonly JudgedReading[], asked: Parameters<typeof record>[1] = {}) =>
  judgeStep('cook', record(readings, { class: 'beef_whole', ...asked }), fsis).come_up;

describe('50 to 130 °F within 6 h (FSIS Appendix A)', () => {
  test.each([
    ['in exactly 6 h', [reading(0, 50), reading(360, 130)], 'kept', []],
    [
      'a second over, and nothing proves it',
      [reading(0, 50), reading(360 + 1 / 60, 130)],
      'not_shown',
      ['brackets_too_wide'],
    ],
    ['still below 6 h after it was above 50', [reading(0, 50.1), reading(360, 129.9)], 'broken', []],
    [
      'a second earlier that is not shown',
      [reading(0, 50.1), reading(360 - 1 / 60, 129.9)],
      'not_shown',
      ['not_reached', 'start_unknown'],
    ],
    ['nobody looked while it was cold', [reading(0, 60), reading(100, 131)], 'not_shown', ['start_unknown']],
    [
      'the coldest place shows no start',
      [reading(0, 45, { spot: 'coldest' }), reading(1, 60), reading(100, 131)],
      'not_shown',
      ['start_unknown'],
    ],
    [
      'a suspect start is none',
      [reading(0, 45, { suspect: true }), reading(1, 60), reading(100, 131)],
      'not_shown',
      ['start_unknown', 'suspect_reading'],
    ],
  ] as const)('%s: %s', (_, readings, verdict, reasons) => {
    expect(comeUp(readings)).toMatchObject({ verdict, reasons, limit_min: 360 });
  });
  test('the last look before the step starts the clock', () => {
    const readings = [reading(-10, 40), reading(5, 60), reading(300, 130)];
    expect(comeUp(readings, { start: at(0) })).toMatchObject({ verdict: 'kept', longest_min: 310 });
  });
  test('while the time runs it is open, with its deadline', () => {
    expect(comeUp([reading(0, 45), reading(60, 80)], { asOf: at(120) })).toMatchObject({
      verdict: 'not_shown',
      open: true,
      deadline: at(360),
      remaining_min: 240,
      next: { action: 'reach_target', by: at(360) },
    });
    expect(comeUp([reading(0, 45), reading(60, 80)], { asOf: at(361) })?.open).toBe(false);
  });
  test('the worst of two pieces counts', () => {
    const pieces = [
      reading(0, 45, { piece: 1 }),
      reading(0, 45, { piece: 2 }),
      reading(300, 131, { piece: 1 }),
      reading(400, 131, { piece: 2 }),
    ];
    expect(comeUp(pieces)).toMatchObject({ verdict: 'not_shown', longest_min: 400 });
  });
  test('nobody looked', () => {
    expect(comeUp([], { start: at(0) })).toMatchObject({ verdict: 'not_shown', reasons: ['no_reading'] });
  });
});

test('a code without the figure has no such stage', () => {
  expect(judgeStep('cook', record([reading(0, 145)]), fda).come_up).toBeUndefined();
});
