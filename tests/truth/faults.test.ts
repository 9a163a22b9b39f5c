import { describe, expect, test } from 'vitest';
import type { Stage, Stages } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, RuleKind } from '#lib/judge/record.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Figures, Profile } from '#lib/limits/profile.ts';
import { findingsOf } from './claims.ts';
import { historyOf } from './history.ts';
import { type Judge, ours, run } from './run.ts';

/** The same figure a degree Fahrenheit easier to keep. */
const looser = (figure: TemperatureFigure): TemperatureFigure => {
  const down = figure.comparison === 'at_or_above' || figure.comparison === 'above' ? -1 : 1;
  const { degF, degC } = figure.value;
  return {
    ...figure,
    value: { degF: degF === null ? null : degF + down, degC: degC === null ? null : degC + down / 1.8 },
  };
};

type Within = NonNullable<Figures['reheat_within']>;
const longer = (within: Within, minutes: number): Within => ({
  ...within,
  minutes: within.minutes + minutes,
});

/** A judge that reads the figures of a profile with one of them wrong, in steps of one kind or of all. */
const withFigures =
  (change: (figures: Figures) => Partial<Profile['figures']>, only?: RuleKind): Judge =>
  ({ kind, record, profile }) => {
    const { figures } = profile;
    const changed = only === undefined || only === kind ? { ...figures, ...change(figures) } : figures;
    return judgeStep(kind, record, { ...profile, figures: changed });
  };

const timed = (change: (rule: NonNullable<Figures['time_control']>) => Figures['time_control']): Judge =>
  withFigures(({ time_control: rule }) => ({ time_control: rule && change(rule) }));

const cooledLonger = withFigures(
  ({ cooling }) => ({ cooling: cooling.map((one) => ({ ...one, within: longer(one.within, 10) })) }),
  'noncontinuous',
);

/** A judge whose verdicts are turned. */
const turned =
  (turn: (stage: Stage) => Stage['verdict']): Judge =>
  ({ kind, record, profile }) =>
    Object.fromEntries(
      stageEntries(judgeStep(kind, record, profile)).map(([name, stage]) => [
        name,
        { ...stage, verdict: turn(stage) },
      ]),
    ) as Stages;

/** A judge that reads the record wrong. */
const misread =
  (change: (reading: Parameters<Judge>[0]['record']['readings'][number]) => object): Judge =>
  ({ kind, record, profile }) =>
    judgeStep(
      kind,
      { ...record, readings: record.readings.map((one) => ({ ...one, ...change(one) })) },
      profile,
    );

/** A judge that fills in what nobody noted. */
const assumed =
  (assume: (facts: Facts, asOf: number) => Facts): Judge =>
  ({ kind, record, profile }) =>
    judgeStep(kind, { ...record, facts: { ...record.facts, ...assume(record.facts, record.asOf) } }, profile);

/** The steps that it is wrong of (null = any), what is wrong, and the judge. */
const faults: [RuleKind | null, string, Judge][] = [
  [
    'hot_hold',
    'hot holding a degree loose',
    withFigures(({ hot_hold: hot }) => ({ hot_hold: hot && looser(hot) })),
  ],
  [
    'cold_hold',
    'cold holding a degree loose',
    withFigures(({ cold_hold: cold }) => ({ cold_hold: cold && looser(cold) })),
  ],
  [
    'hot_hold',
    'a hold twenty minutes longer than the longest',
    withFigures(({ hot_hold_at_most: most }) => ({ hot_hold_at_most: most && longer(most, 20) })),
  ],
  [
    'hot_hold',
    'a reading written twenty minutes late',
    withFigures(({ record_hot_every: every }) => ({ record_hot_every: every && longer(every, 20) })),
  ],
  [
    'cooling',
    'a cooling to a degree more',
    withFigures(({ cooling }) => ({ cooling: cooling.map((one) => ({ ...one, to: looser(one.to) })) })),
  ],
  [
    'cooling',
    'a cooling ten minutes longer',
    withFigures(({ cooling }) => ({
      cooling: cooling.map((one) => ({ ...one, within: longer(one.within, 10) })),
    })),
  ],
  [
    'reheat',
    'a reheat ten minutes longer',
    withFigures(({ reheat_within: within }) => ({ reheat_within: within && longer(within, 10) })),
  ],
  [
    'cook',
    'a come-up an hour longer',
    withFigures(({ come_up: up }) => ({ come_up: up && { ...up, within: longer(up.within, 60) } })),
  ],
  [
    'cook',
    'a come-up that begins ten degrees later',
    withFigures(({ come_up: up }) => ({
      come_up: up && { ...up, from: { ...up.from, value: { degF: 60, degC: null } } },
    })),
  ],
  [
    'cook',
    'a chart two degrees lower',
    withFigures(({ cook }) => ({
      cook: Object.fromEntries(
        Object.entries(cook).map(([food, chart]) => [
          food,
          {
            ...chart,
            rows: chart.rows.map((row) => ({ ...row, degF: row.degF - 2, degC: row.degC - 1.1 })),
          },
        ]),
      ),
    })),
  ],
  [
    'cook',
    'an oven twenty degrees cooler',
    withFigures(({ roast_oven: table }) => ({
      roast_oven: table && {
        ...table,
        lines: table.lines.map((line) => ({
          ...line,
          light_degF: line.light_degF - 20,
          heavy_degF: line.heavy_degF - 20,
        })),
      },
    })),
  ],
  [
    'reheat',
    'a weight that nobody noted taken for a heavy one',
    assumed(({ mass_lb: mass }) => ({ mass_lb: mass ?? 20 })),
  ],
  [
    'cook',
    'a roast of exactly the weight taken for a light one',
    withFigures(({ roast_oven: table }) => ({ roast_oven: table && { ...table, heavy_from_lb: 10.05 } })),
  ],
  [
    null,
    'a microwave’s care taken for granted',
    assumed(({ covered, stirred, stood_s: stood }) => ({
      covered: covered ?? true,
      stirred: stirred ?? true,
      stood_s: stood ?? 120,
    })),
  ],
  [
    'time_control',
    'four or six hours ten minutes longer',
    timed((rule) => ({
      ...rule,
      four_hours: rule.four_hours && { ...rule.four_hours, within: longer(rule.four_hours.within, 10) },
      six_hours: rule.six_hours && { ...rule.six_hours, within: longer(rule.six_hours.within, 10) },
    })),
  ],
  [
    'time_control',
    'a start of the four hours a degree loose',
    timed((rule) => ({
      ...rule,
      four_hours: rule.four_hours && {
        ...rule.four_hours,
        starts: rule.four_hours.starts.map((start) => ({ ...start, figure: looser(start.figure) })),
      },
    })),
  ],
  [
    'time_control',
    'six hours a degree warmer',
    timed((rule) => ({
      ...rule,
      six_hours: rule.six_hours && {
        ...rule.six_hours,
        stays: rule.six_hours.stays && looser(rule.six_hours.stays),
      },
    })),
  ],
  [
    'time_control',
    'a warm start without its condition',
    timed((rule) => ({
      ...rule,
      four_hours: rule.four_hours && {
        ...rule.four_hours,
        starts: rule.four_hours.starts.map(({ stays: _, ...start }) => start),
      },
    })),
  ],
  [
    'time_control',
    'food that nobody saw go taken for gone',
    assumed(({ gone_at: gone }, asOf) => ({ gone_at: gone ?? asOf })),
  ],
  [
    null,
    'a procedure that nobody noted taken for written',
    assumed(({ written, approved, written_procedure: procedure }) => ({
      written: written ?? true,
      approved: approved ?? true,
      written_procedure: procedure ?? true,
    })),
  ],
  [
    'time_control',
    'a mark that nobody noted taken for there',
    assumed(({ marked }) => ({ marked: marked ?? true })),
  ],
  [
    'noncontinuous',
    'a first heat ten minutes longer',
    withFigures(({ noncontinuous: rule }) => ({
      noncontinuous: rule && { ...rule, initial_heating: longer(rule.initial_heating, 10) },
    })),
  ],
  ['noncontinuous', 'a cooling between two heats ten minutes longer', cooledLonger],
  [
    'noncontinuous',
    'a first heat taken for the last cook',
    assumed(({ final_from: last, heat_from: first }) =>
      last == null || first == null ? {} : { final_from: first },
    ),
  ],
  [
    null,
    'the shortest time taken for the longest',
    turned(({ verdict, longest_min: longest, shortest_min: shortest, limit_min: limit }) =>
      verdict === 'not_shown' && longest !== null && limit !== null && (shortest ?? 0) <= limit
        ? 'kept'
        : verdict,
    ),
  ],
  [
    null,
    'the longest time taken for the shortest',
    turned(({ verdict, longest_min: longest, limit_min: limit }) =>
      verdict === 'not_shown' && longest !== null && limit !== null && longest >= limit ? 'broken' : verdict,
    ),
  ],
  [null, 'seconds that nobody counted', misread(() => ({ held_s: 100_000 }))],
  [
    null,
    'a thin end taken for the thick part',
    misread(({ spot }) => (spot === 'edge' ? { spot: 'core' } : {})),
  ],
  [null, 'degrees rounded up', misread(({ value }) => ({ value: Math.ceil(value) }))],
  [null, 'the air taken for food', misread(({ spot }) => (spot === 'air' ? { spot: 'core' } : {}))],
];

describe('a judge with a fault is caught within 40,000 histories', () => {
  test.each(faults)('%s: %s', (kind, _, judge) => {
    expect(run(0, 40_000, judge, 1, kind === null ? null : [kind]).findings).toHaveLength(1);
  });
});

/**
 * With exact thermometers a kept verdict turned to broken, or the other way, is false of the food: no stage is left
 * without a sentence. (A food that got hot again can have a kept and a broken cooling on one curve.)
 */
test('a verdict turned upside down is found in every stage of every rule', () => {
  const turns: Record<string, { made: number; found: number }> = {};
  for (let seed = 0; seed < 10_000; seed++) {
    const history = historyOf(seed);
    if (history.error > 0) continue;
    const stages = ours(history);
    for (const [name, stage] of stageEntries(stages)) {
      if (stage.verdict !== 'kept' && stage.verdict !== 'broken') continue;
      const verdict = stage.verdict === 'kept' ? 'broken' : 'kept';
      const key = `${history.kind}.${name}`;
      turns[key] ??= { made: 0, found: 0 };
      const count = turns[key];
      count.made++;
      if (findingsOf(history, { ...stages, [name]: { ...stage, verdict } }).length > 0) count.found++;
    }
  }
  expect(Object.keys(turns)).toHaveLength(27);
  const unseen = Object.entries(turns).filter(([, { made, found }]) => found < 0.9 * made);
  expect(unseen).toEqual([]);
});
