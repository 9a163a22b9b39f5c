import { describe, expect, it, test } from 'vitest';
import type { Reason, Stage } from '#lib/judge/answer.ts';
import { judgePieces, judgeStep } from '#lib/judge/judge.ts';
import type { StepRecord } from '#lib/judge/record.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { at, fda, reading, record } from './records.ts';

const judged = (one: StepRecord) => judgeStep('hot_hold', one, fda);
const held = (one: StepRecord): Stage => {
  const stage = judged(one).at_readings;
  if (stage === undefined) throw new Error('no at_readings');
  return stage;
};
const edge = { spot: 'edge' } as const;

describe('hot food is kept at or above the published figure of the unit that was read (3-501.16(A)(1))', () => {
  test.each([
    { value: 134.9, unit: 'degF', verdict: 'broken', why: 'one tenth under 135 °F' },
    { value: 135, unit: 'degF', verdict: 'kept', why: 'exactly 135 °F' },
    { value: 135.1, unit: 'degF', verdict: 'kept', why: 'one tenth over' },
    { value: 56.9, unit: 'degC', verdict: 'broken', why: 'one tenth under 57 °C' },
    { value: 57, unit: 'degC', verdict: 'kept', why: 'exactly 57 °C, which is 134.6 °F' },
    { value: 57.1, unit: 'degC', verdict: 'kept', why: 'one tenth over' },
    { value: 134.6, unit: 'degF', verdict: 'broken', why: 'the same temperature as 57 °C, read in °F' },
  ] as const)('$value $unit is $verdict: $why', ({ value, unit, verdict }) => {
    expect(held(record([reading(0, value, { ...edge, unit })])).verdict).toBe(verdict);
  });
});

describe('a roast is held at 130 °F only when its cook by the chart is shown', () => {
  const cases: [
    number,
    'degF' | 'degC',
    FoodClass,
    'kept' | 'not_shown' | 'broken' | 'none',
    Stage['verdict'],
  ][] = [
    [129.9, 'degF', 'intact_roast', 'kept', 'broken'],
    [130, 'degF', 'intact_roast', 'kept', 'kept'],
    [130.1, 'degF', 'intact_roast', 'kept', 'kept'],
    [53.9, 'degC', 'intact_roast', 'kept', 'broken'],
    [54, 'degC', 'intact_roast', 'kept', 'kept'],
    [54.1, 'degC', 'intact_roast', 'kept', 'kept'],
    [129.9, 'degF', 'intact_roast', 'not_shown', 'broken'],
    [130, 'degF', 'intact_roast', 'not_shown', 'not_shown'],
    [134.9, 'degF', 'intact_roast', 'not_shown', 'not_shown'],
    [135, 'degF', 'intact_roast', 'not_shown', 'kept'],
    [53.9, 'degC', 'intact_roast', 'not_shown', 'broken'],
    [56.9, 'degC', 'intact_roast', 'not_shown', 'not_shown'],
    [134.9, 'degF', 'intact_roast', 'broken', 'broken'],
    [134.9, 'degF', 'intact_roast', 'none', 'broken'],
    [134, 'degF', 'poultry', 'kept', 'broken'],
    [134, 'degF', 'injected_or_tenderized', 'kept', 'broken'],
    [134, 'degF', 'pulled_or_chopped', 'kept', 'broken'],
    [134, 'degF', 'unknown', 'kept', 'broken'],
  ];
  test.each(cases)('%s %s of %s, cook %s: %s', (value, unit, foodClass, roastCook, verdict) => {
    const one = record([reading(0, value, { ...edge, unit })], {
      class: foodClass,
      facts: { roast_cook: roastCook },
    });
    expect(held(one).verdict).toBe(verdict);
  });
});

describe('each reason has a record that gives it', () => {
  const rows: [Reason, StepRecord][] = [
    ['no_reading', record([], { start: at(0), asOf: at(10) })],
    ['air_only', record([reading(0, 150, { spot: 'air' })])],
    ['warmest_only', record([reading(0, 150, { spot: 'warmest' })])],
    ['suspect_only', record([reading(0, 150, { ...edge, suspect: true })])],
    ['suspect_reading', record([reading(0, 150, { ...edge, suspect: true }), reading(9, 150, edge)])],
    ['close_to_limit', record([reading(0, 137, edge)])],
    ['spot_not_natural', record([reading(0, 150, { spot: 'surface' })])],
    ['some_pieces_unread', record([reading(0, 150, { ...edge, piece: 1 })], { pieces: 2 })],
    [
      'allowance_not_shown',
      record([reading(0, 132, edge)], { class: 'intact_roast', facts: { roast_cook: 'not_shown' } }),
    ],
  ];
  test.each(rows)('%s', (reason, one) => expect(held(one).reasons).toEqual([reason]));
});

describe('a reading is close within its thermometer’s accuracy, on either side', () => {
  test.each([
    { value: 137, unit: 'degF', accuracy: null, close: true, why: 'exactly 2 °F over' },
    { value: 137.1, unit: 'degF', accuracy: null, close: false, why: 'a tenth further' },
    { value: 133, unit: 'degF', accuracy: null, close: true, why: 'exactly 2 °F under' },
    { value: 132.9, unit: 'degF', accuracy: null, close: false, why: 'a tenth further under' },
    { value: 58, unit: 'degC', accuracy: null, close: true, why: 'exactly 1 °C over' },
    { value: 58.1, unit: 'degC', accuracy: null, close: false, why: 'a tenth further' },
    {
      value: 136.8,
      unit: 'degF',
      accuracy: 1.8,
      close: true,
      why: 'exactly its own accuracy; as floats it is more',
    },
    { value: 136.9, unit: 'degF', accuracy: 1.8, close: false, why: 'a tenth more than its own' },
    { value: 57.6, unit: 'degC', accuracy: 0.5, close: false, why: 'a finer probe' },
  ] as const)('$value $unit with accuracy $accuracy: $why', ({ value, unit, accuracy, close }) => {
    const { reasons } = held(record([reading(0, value, { ...edge, unit, accuracy })]));
    expect(reasons.includes('close_to_limit')).toBe(close);
  });
});

describe('a corrected reading is judged by the worse of typed and corrected, in exact decimals', () => {
  test.each([
    { value: 137, correction: -2, verdict: 'kept' },
    { value: 137, correction: -2.1, verdict: 'broken' },
    { value: 134.9, correction: 5, verdict: 'broken' },
    { value: 134.7, correction: 0.3, verdict: 'broken' },
    { value: 135.3, correction: -0.3, verdict: 'kept' }, // 135.3 − 0.3 as floats is 135.00000000000003 or less
  ])('$value with $correction is $verdict', ({ value, correction, verdict }) => {
    expect(held(record([reading(0, value, { ...edge, correction })])).verdict).toBe(verdict);
  });
});

describe('the time below is told from looks at the same place', () => {
  it('runs from the last good look before to the first good one after', () => {
    const one = record([
      reading(0, 140, edge),
      reading(60, 130, edge),
      reading(90, 129, edge),
      reading(100, 140, edge),
    ]);
    expect(held(one)).toMatchObject({
      verdict: 'broken',
      first_bad: at(60),
      below_longest_min: 100,
      below_shortest_min: 30,
    });
  });
  it('is not ended by a good and a bad reading of one moment', () => {
    const one = record([
      reading(0, 140, edge),
      reading(60, 130, edge),
      reading(70, 131, edge),
      reading(70, 141, edge),
      reading(90, 132, edge),
      reading(100, 140, edge),
    ]);
    expect(held(one)).toMatchObject({ below_longest_min: 100, below_shortest_min: 30 });
  });
  it('is not ended by a suspect thermometer', () => {
    const one = record([reading(0, 130, edge), reading(60, 150, { ...edge, suspect: true })], {
      asOf: at(90),
    });
    expect(held(one)).toMatchObject({ below_longest_min: 90, below_shortest_min: 0 });
  });
  it('rests on the bad readings, by their place in the record', () => {
    const one = record([reading(10, 130, edge), reading(0, 140, edge), reading(20, 131, edge)]);
    expect(held(one).rests_on).toEqual([0, 2]);
  });
});

describe('pieces are judged alone', () => {
  const one = record(
    [
      reading(0, 150, { ...edge, piece: 1 }),
      reading(1, 130, { ...edge, piece: 2 }),
      reading(2, 151, { ...edge, piece: 1 }),
      reading(3, 150, { ...edge, piece: 4000 }),
    ],
    { pieces: 5 },
  );
  it('and told apart', () => {
    const verdicts = judgePieces('hot_hold', one, fda).map(({ piece, stages }) => [
      piece,
      stages.at_readings?.verdict,
      stages.at_readings?.rests_on,
    ]);
    expect(verdicts).toEqual([
      [1, 'kept', [0, 2]],
      [2, 'broken', [1]],
      [4000, 'kept', [3]],
    ]);
  });
  it('and one broken piece breaks the step', () => {
    expect(judged(one).at_readings).toMatchObject({ verdict: 'broken', pieces_read: 3, rests_on: [1] });
  });
  it('and a kept step rests on every proving reading of every piece', () => {
    const kept = record([
      reading(0, 150, { ...edge, piece: 2 }),
      reading(1, 150, { spot: 'warmest', piece: 2 }),
      reading(2, 150, { ...edge, piece: 1 }),
    ]);
    expect(held(kept).rests_on).toEqual([0, 2]);
  });
});

describe('the house plan asks for looks, not for temperatures', () => {
  const looks = [reading(0, 150, edge), reading(120, 130, edge)];
  it('is kept with exactly the interval, a bad look being a look', () => {
    expect(judged(record(looks, { planIntervalMin: 120 })).house_plan_interval).toMatchObject({
      verdict: 'kept',
      open: true,
      longest_gap_min: 120,
      next: { action: 'look_by_plan', by: at(240) },
    });
  });
  it('is broken by a second more', () => {
    const late = record(looks, { planIntervalMin: 120, asOf: at(240) + 1000 });
    expect(judged(late).house_plan_interval).toMatchObject({ verdict: 'broken', open: false });
  });
  it('is not shown where neither a start nor a reading is', () => {
    const nothing = record([], { planIntervalMin: 120 });
    expect(judged(nothing).house_plan_interval).toMatchObject({
      verdict: 'not_shown',
      reasons: ['no_reading'],
    });
  });
});
