import { describe, expect, test } from 'vitest';
import type { Stage, Stages } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { intervals } from './history.ts';
import { addTold, type Judge, nothingTold, run } from './run.ts';
import { shareLines, shareOf } from './share.ts';
import { inThreads } from './threads.ts';

const HISTORIES = 100_000;
const STRETCH = 2500;

/** Measured over 100,000 histories: of what was kept, a look each 15 minutes shows at least so much. */
const least: Record<string, number> = {
  'hot_hold.at_readings': 0.9,
  'cooling.stage_1': 0.45,
  'cooling.total': 0.6,
  'reheat.temperature': 0.5,
  'reheat.time': 0.2,
  'cook.temperature': 0.7,
};

test('over 100,000 histories no verdict is false of the food, and a judge that looks more can show more', {
  timeout: 180_000,
}, async () => {
  const told = nothingTold();
  const stretches = Array.from({ length: HISTORIES / STRETCH }, (_, place) => ({
    from: place * STRETCH,
    to: (place + 1) * STRETCH,
  }));
  await inThreads(stretches, 2, (more) => addTold(told, more));
  process.stderr.write(`${shareLines(told.shares).join('\n')}\n`);
  expect(told.findings).toEqual([]);
  expect(told.histories).toBe(HISTORIES);
  for (const [rule, bound] of Object.entries(least)) {
    const shares = intervals.map((every) => shareOf(told.shares, rule, every, 'kept'));
    expect([rule, (shares[0] ?? 0) > bound]).toEqual([rule, true]);
    // From every 15 minutes to every 4 hours; two neighbours may lie close together.
    expect([rule, (shares[0] ?? 0) > (shares[2] ?? 1) && (shares[2] ?? 0) > (shares[4] ?? 1)]).toEqual([
      rule,
      true,
    ]);
  }
});

const looser = (figure: TemperatureFigure): TemperatureFigure => {
  const down = figure.comparison === 'at_or_above' || figure.comparison === 'above' ? -1 : 1;
  const { degF, degC } = figure.value;
  return {
    ...figure,
    value: { degF: degF === null ? null : degF + down, degC: degC === null ? null : degC + down / 1.8 },
  };
};

/** A judge that reads the figures of a profile with one of them wrong. */
const withFigures =
  (change: (figures: Profile['figures']) => Partial<Profile['figures']>): Judge =>
  ({ kind, record, profile }) =>
    judgeStep(kind, record, { ...profile, figures: { ...profile.figures, ...change(profile.figures) } });

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

describe('a judge with a fault is caught within 20,000 histories', () => {
  const faults: [string, Judge][] = [
    ['hot holding a degree loose', withFigures(({ hot_hold: hot }) => ({ hot_hold: hot && looser(hot) }))],
    [
      'a cooling to a degree more',
      withFigures(({ cooling }) => ({ cooling: cooling.map((one) => ({ ...one, to: looser(one.to) })) })),
    ],
    [
      'a cooling ten minutes longer',
      withFigures(({ cooling }) => ({
        cooling: cooling.map((one) => ({
          ...one,
          within: { ...one.within, minutes: one.within.minutes + 10 },
        })),
      })),
    ],
    [
      'a reheat ten minutes longer',
      withFigures(({ reheat_within: within }) => ({
        reheat_within: within && { ...within, minutes: within.minutes + 10 },
      })),
    ],
    [
      'the shortest time taken for the longest',
      turned(({ verdict, longest_min: longest, shortest_min: shortest, limit_min: limit }) =>
        verdict === 'not_shown' && longest !== null && limit !== null && (shortest ?? 0) <= limit
          ? 'kept'
          : verdict,
      ),
    ],
    [
      'the longest time taken for the shortest',
      turned(({ verdict, longest_min: longest, limit_min: limit }) =>
        verdict === 'not_shown' && longest !== null && limit !== null && longest >= limit
          ? 'broken'
          : verdict,
      ),
    ],
    ['seconds that nobody counted', misread(() => ({ held_s: 100_000 }))],
    ['a thin end taken for the thick part', misread(({ spot }) => (spot === 'edge' ? { spot: 'core' } : {}))],
    ['degrees rounded up', misread(({ value }) => ({ value: Math.ceil(value) }))],
    ['the air taken for food', misread(({ spot }) => (spot === 'air' ? { spot: 'core' } : {}))],
  ];
  test.each(faults)('%s', (_, judge) => {
    expect(run(0, 20_000, judge, 1).findings).toHaveLength(1);
  });
});
