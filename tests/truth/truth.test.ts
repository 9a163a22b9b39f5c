import { expect, test } from 'vitest';
import type { StageName } from '#lib/judge/answer.ts';
import type { RuleKind } from '#lib/judge/record.ts';
import { intervals } from './history.ts';
import { addTold, nothingTold } from './run.ts';
import { shareLines, shareOf } from './share.ts';
import { inThreads } from './threads.ts';

const HISTORIES = 100_000;
const STRETCH = 2500;

/** Measured over 100,000 histories: of what was kept, a look each 15 minutes shows at least so much. */
const least: Record<string, number> = {
  'hot_hold.at_readings': 0.9,
  'cold_hold.at_readings': 0.9,
  'cooling.stage_1': 0.45,
  'cooling.total': 0.6,
  'reheat.temperature': 0.5,
  'reheat.time': 0.2,
  'cook.temperature': 0.7,
  'cook.come_up': 0.5,
  'time_control.warmth': 0.9,
  'noncontinuous.cooling': 0.6,
  'noncontinuous.final_cook': 0.7,
};

/**
 * The stages of each rule of which the machine has seen both kept and broken, each held to its sentence. Calendar
 * days (the date mark) and a check of a thermometer have no curve: they stand in tests/judge.
 */
const stagesOf: Record<RuleKind, readonly StageName[]> = {
  hot_hold: ['at_readings', 'between_readings', 'house_plan_interval', 'record_interval', 'hold_length'],
  cold_hold: ['at_readings', 'between_readings', 'house_plan_interval'],
  cooling: ['stage_1', 'stage_2', 'total', 'ambient_total'],
  reheat: ['temperature', 'time', 'oven'],
  cook: ['temperature', 'oven', 'come_up'],
  time_control: ['procedure', 'marking', 'start', 'time', 'warmth'],
  noncontinuous: ['initial_heating', 'cooling', 'final_cook', 'procedure'],
};

test('over 100,000 histories no verdict is false of the food, and a judge that looks more can show more', {
  timeout: 600_000, // of its threads; seconds on a free machine
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
  const said = Object.entries(told.verdicts).filter(([key, times]) => /kept|broken/.test(key) && times >= 20);
  const expected = Object.entries(stagesOf).flatMap(([kind, names]) =>
    names.flatMap((name) => [`${kind}.${name}.kept`, `${kind}.${name}.broken`]),
  );
  expect(said.map(([key]) => key).sort()).toEqual(expected.sort());
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
