import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { high, low } from '#lib/judge/compare.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { JudgedReading, RuleKind, StepRecord } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import { openCanStillBeKept } from './open-promises.ts';
import {
  addingNeverMends,
  costIsLinear,
  laterNeverMends,
  orderAndNamesDoNotMatter,
  type Rule,
  recordsOf,
  removingNeverMends,
  shiftingChangesNothing,
} from './promises.ts';
import { at, fda, reading, record } from './records.ts';
import { crossing, curves, looks, readingsOf, valueAt } from './soundness.ts';

const of = (id: string): Profile => {
  const found = profile(id);
  if (found === null) throw new Error(`tests: ${id} is missing`);
  return found;
};
const noFacts = fc.constant({});

const hold: Rule = {
  name: 'hot_hold',
  kind: 'hot_hold',
  records: recordsOf(fc.record({ roast_cook: fc.constantFrom('kept', 'not_shown', 'broken', undefined) })),
};
const coolingFacts = fc.record({
  roast_cook: fc.constantFrom('kept' as const, undefined),
  ingredients: fc.constantFrom('cooked' as const, 'cooked' as const, 'ambient' as const),
  prepared_at: fc.constantFrom(null, at(-10), at(5)),
});
const cooling: Rule = { name: 'cooling', kind: 'cooling', records: recordsOf(coolingFacts) };
const reheat: Rule = {
  name: 'reheat',
  kind: 'reheat',
  records: recordsOf(
    fc.record({
      route: fc.constantFrom('conventional', 'conventional', 'microwave', 'commercial', 'roast'),
      covered: fc.constantFrom(true, true, null, false),
      stirred: fc.constant(true),
      stood_s: fc.constantFrom(120, 119, null),
      oven: fc.constantFrom('still_dry' as const, 'pit' as const, null),
      oven_temp: fc.constantFrom(225, 250, null),
      mass_lb: fc.constantFrom(8, 12, null),
    }),
  ),
};
const cold: Rule = { name: 'cold_hold', kind: 'cold_hold', records: recordsOf(noFacts) };
/** The classes with rows of their own, one that was cooked before, and one that nobody knows. */
const cookClasses = [
  'intact_roast',
  'beef_whole',
  'ground',
  'poultry',
  'plant',
  'egg',
  'pulled_or_chopped',
  'unknown',
] as const;
const cook: Rule = {
  name: 'cook',
  kind: 'cook',
  records: recordsOf(
    fc.record({
      method: fc.constantFrom('oven', 'oven', 'microwave'),
      oven: fc.constantFrom('still_dry' as const, 'pit' as const, null),
      oven_temp: fc.constantFrom(225, 250, 350, null),
      mass_lb: fc.constantFrom(8, 12, null),
      covered: fc.constantFrom(true, null, false),
      stirred: fc.constant(true),
      stood_s: fc.constantFrom(120, null),
    }),
    cookClasses,
  ),
};
const timeControl: Rule = {
  name: 'time_control',
  kind: 'time_control',
  records: recordsOf(
    fc.record({
      mode: fc.constantFrom('4h' as const, '6h' as const),
      removed_at: fc.constantFrom(at(0), at(10), null),
      gone_at: fc.constantFrom(null, at(200), at(240), at(241), at(360)),
      written_procedure: fc.constantFrom(true, false, null),
      marked: fc.constantFrom(true, false, null),
      starts_as: fc.constantFrom(null, 'produce_cut' as const),
    }),
  ),
};
const noncontinuous: Rule = {
  name: 'noncontinuous',
  kind: 'noncontinuous',
  records: recordsOf(
    fc.record({
      heat_from: fc.constantFrom(at(0), null),
      heat_to: fc.constantFrom(at(50), at(60), at(61), null),
      final_from: fc.constantFrom(at(300), null),
      written: fc.constantFrom(true, false, null),
      approved: fc.constantFrom(true, null),
    }),
    cookClasses,
  ),
};
/** Stages that only some places have, each where it is in force. */
const comeUp: Rule = {
  name: 'cook with a come-up',
  kind: 'cook',
  profile: of('fsis_appendix_a'),
  records: recordsOf(noFacts, ['intact_roast', 'poultry']),
};
const holdLength: Rule = {
  name: 'hot_hold with a greatest length',
  kind: 'hot_hold',
  profile: of('de'),
  records: recordsOf(noFacts),
};
const recordInterval: Rule = {
  name: 'hot_hold with an interval for writing, above the figure',
  kind: 'hot_hold',
  profile: of('nz'),
  records: recordsOf(noFacts),
};
const surface: Rule = {
  name: 'hot_hold with a figure for the surface',
  kind: 'hot_hold',
  profile: of('za'),
  records: recordsOf(noFacts),
};
const fromPrevious: Rule = {
  name: 'cooling counted from the stage before',
  kind: 'cooling',
  profile: of('us_md'),
  records: recordsOf(coolingFacts),
};
const strict: Rule = {
  name: 'cooling below the figure, from above one',
  kind: 'cooling',
  profile: of('de_cook_chill'),
  records: recordsOf(noFacts),
};
const rules = [
  hold,
  cooling,
  reheat,
  cold,
  cook,
  timeControl,
  noncontinuous,
  comeUp,
  holdLength,
  recordInterval,
  surface,
  fromPrevious,
  strict,
];

test('every kind of rule is promised', () => {
  const kinds: Record<RuleKind, true> = {
    hot_hold: true,
    cold_hold: true,
    cooling: true,
    reheat: true,
    cook: true,
    time_control: true,
    noncontinuous: true,
  };
  expect([...new Set(rules.map(({ kind }) => kind))].sort()).toEqual(Object.keys(kinds).sort());
});

describe.each(rules)('$name keeps what every rule promises', (rule) => {
  test('a reading more never turns broken into kept', () => addingNeverMends(rule));
  test('the order of entry and the names of probes do not matter', () => orderAndNamesDoNotMatter(rule));
  test('shifting all instants changes no length and no verdict', () => shiftingChangesNothing(rule));
  test('a later moment never turns broken into anything else', () => laterNeverMends(rule));
  test('what is said to be open can still be kept', () => openCanStillBeKept(rule, 60));
});

describe('taking a passing reading away never turns anything into kept', () => {
  test('cold_hold', () => {
    removingNeverMends(cold, ({ value, unit, correction }) =>
      correction === null ? value <= (unit === 'degF' ? 41 : 5) : false,
    );
  });
  test('hot_hold', () => {
    removingNeverMends(hold, ({ value, unit, correction }) =>
      correction === null ? value >= (unit === 'degF' ? 135 : 57) : false,
    );
  });
  /** No later reading of the piece is back at the figure from which the time counts. */
  const neverTurns =
    (isBack: (one: JudgedReading) => boolean) =>
    (one: JudgedReading, { readings }: StepRecord) =>
      !readings.some(
        (other) => other.piece === one.piece && other.at >= one.at && other !== one && isBack(other),
      );
  const isAtLeast = (degF: number, degC: number) => (one: JudgedReading) =>
    low(one) >= (one.unit === 'degF' ? degF : degC);
  const isAtMost = (degF: number, degC: number) => (one: JudgedReading) =>
    high(one) <= (one.unit === 'degF' ? degF : degC);
  const staysCold = neverTurns(({ value, unit }) => value >= (unit === 'degF' ? 133 : 56));
  const staysWarm = neverTurns(({ value, unit }) => value <= (unit === 'degF' ? 52 : 11.1));
  test('cooling', () => {
    removingNeverMends(cooling, (one, _, all) => isAtMost(39, 3.5)(one) && staysCold(one, all));
    removingNeverMends(fromPrevious, (one, _, all) => isAtMost(39, 3.5)(one) && staysCold(one, all));
  });
  test('reheat', () => {
    removingNeverMends(reheat, (one, _, all) => isAtLeast(167, 76)(one) && staysWarm(one, all));
  });
  test('cook', () => {
    removingNeverMends(cook, isAtLeast(165, 74));
    removingNeverMends(comeUp, (one, _, all) => isAtLeast(165, 74)(one) && staysWarm(one, all));
  });
  test('hot_hold of other places', () => {
    for (const rule of [holdLength, surface]) removingNeverMends(rule, isAtLeast(150, 65));
    removingNeverMends(recordInterval, isAtLeast(150, 65));
  });
  /** The piece keeps a food reading in the part of the step that is judged there. */
  const isAnotherIn = (one: JudgedReading, { readings, end, asOf }: StepRecord, from: number, to: number) =>
    readings.some(
      ({ at: when, piece, spot }, place) =>
        readings[place] !== one &&
        piece === one.piece &&
        spot !== 'air' &&
        when >= from &&
        when <= Math.min(to, end ?? asOf, asOf),
    );
  test('time_control: what was read while it was out', () => {
    removingNeverMends(timeControl, (one, _, all) => {
      const from = all.facts.removed_at ?? all.start ?? 0;
      const to = all.facts.gone_at ?? Number.POSITIVE_INFINITY;
      return isAtMost(70, 21)(one) && one.at > from && isAnotherIn(one, all, from, to);
    });
  });
  test('noncontinuous: cold between the heats, hot in the last', () => {
    removingNeverMends(noncontinuous, (one, _, all) => {
      const { heat_to: heatTo, final_from: finalFrom } = all.facts;
      const last = finalFrom ?? Number.POSITIVE_INFINITY;
      if (one.at > last)
        return isAtLeast(165, 74)(one) && isAnotherIn(one, all, last, Number.POSITIVE_INFINITY);
      const from = heatTo ?? Number.POSITIVE_INFINITY;
      const isBetween = one.at > from && one.at < last && isAnotherIn(one, all, from, last);
      return isBetween && isAtMost(39, 3.5)(one) && staysCold(one, all);
    });
  });
});

describe('judging costs in proportion to the readings', () => {
  const night =
    (value: (place: number) => number, pieces: number) =>
    (count: number): StepRecord =>
      record(
        Array.from({ length: count }, (_, place) =>
          reading(place / 4, value(place), { spot: 'core', piece: (place % pieces) + 1 }),
        ),
        { planIntervalMin: 60, facts: { removed_at: at(0), heat_from: at(0), heat_to: at(0) } },
      );
  test.each([
    ['hot_hold', 'kept', 150],
    ['hot_hold', 'broken', 120],
    ['cooling', 'above the figure', 150],
    ['cooling', 'below the start', 80],
    ['reheat', 'below the target', 60],
    ['reheat', 'above it', 170],
    ['cold_hold', 'kept', 30],
    ['cold_hold', 'broken', 45],
    ['cook', 'below the row', 120],
    ['cook', 'above it', 150],
    ['time_control', 'hot', 150],
    ['noncontinuous', 'cooling', 60],
  ] as const)('%s, %s', (kind, _, value) => {
    costIsLinear(
      { kind },
      night((place) => value + (place % 7), 8),
    );
  });

  test.each(rules.filter(({ profile: place }) => place !== undefined))('$name', (rule) => {
    costIsLinear(
      rule,
      night((place) => 120 + (place % 7), 8),
    );
  });
});

describe.each([
  { error: 0, numRuns: 2000 },
  { error: 2, numRuns: 2000 },
])('with thermometers off by at most $error °F the verdicts are true of the food', ({ error, numRuns }) => {
  test('hot_hold: kept and broken say what was so where it was read', () => {
    const seenCurves = fc.tuple(curves(170, 115), curves(115, 170), looks(600), fc.boolean());
    fc.assert(
      fc.property(seenCurves, ([falling, rising, seen, isFalling]) => {
        const core = (minute: number) => valueAt(isFalling ? falling : rising, minute);
        const edge = (minute: number) => core(minute) - 6;
        const one = record(readingsOf(seen, core, edge, error), { asOf: at(600) });
        const truths = seen.map(({ minute, spot }) => (spot === 'inside' ? core(minute) : edge(minute)));
        const verdict = judgeStep('hot_hold', one, fda).at_readings?.verdict;
        if (verdict === 'kept') for (const truth of truths) expect(truth).toBeGreaterThanOrEqual(135 - error);
        if (verdict === 'broken') expect(Math.min(...truths)).toBeLessThan(135 + error);
        if (error === 0) expect(verdict).toBe(truths.every((truth) => truth >= 135) ? 'kept' : 'broken');
      }),
      { numRuns },
    );
  });

  test('cooling: no kept one took longer than the limit, and no broken one less', () => {
    const proven = { kept: 0, broken: 0 };
    fc.assert(
      fc.property(curves(170, 34), looks(600), fc.integer({ min: 0, max: 20 }), (curve, seen, lag) => {
        const core = (minute: number) => valueAt(curve, minute);
        const one = record(
          readingsOf(seen, core, (minute) => core(minute) - lag, error),
          { asOf: at(600) },
        );
        const stages = judgeStep('cooling', one, fda);
        for (const [stage, figure, limit] of [
          [stages.stage_1, 70, 120],
          [stages.total, 41, 360],
        ] as const) {
          // The thick part is the warmest place: the food has left 135 °F and reached the figure when it has.
          const shortest = crossing(curve, figure + error) - crossing(curve, 135 - error);
          const longest = crossing(curve, figure - error) - crossing(curve, 135 + error);
          if (stage?.verdict === 'kept') expect(shortest).toBeLessThanOrEqual(limit + 1e-6);
          if (stage?.verdict === 'broken') expect(longest).toBeGreaterThanOrEqual(limit - 1e-6);
          if (stage?.verdict === 'kept' || stage?.verdict === 'broken') proven[stage.verdict]++;
        }
      }),
      { numRuns },
    );
    expect(Math.min(proven.kept, proven.broken)).toBeGreaterThan(5); // or the property said nothing
  });

  test('reheat: no kept one was short of the target or longer under way, and no broken one in time', () => {
    const proven = { kept: 0, broken: 0 };
    fc.assert(
      fc.property(curves(33, 185, 60), looks(240), fc.integer({ min: 0, max: 20 }), (curve, seen, lead) => {
        const core = (minute: number) => valueAt(curve, minute);
        const one = record(
          readingsOf(seen, core, (minute) => core(minute) + lead, error),
          { asOf: at(600) },
        );
        const { temperature, time } = judgeStep('reheat', one, fda);
        const last = Math.max(...seen.map(({ minute }) => minute));
        if (temperature?.verdict === 'kept')
          expect(crossing(curve, 165 - error)).toBeLessThanOrEqual(last + 1e-6);
        // The thick part is the coldest place; the thin end leaves the cold first.
        const leftCold = crossing(curve, 41 + error);
        const edgeLeftCold = crossing(curve, 41 - error - lead);
        if (time?.verdict === 'kept')
          expect(crossing(curve, 165 - error) - leftCold).toBeLessThanOrEqual(120 + 1e-6);
        if (time?.verdict === 'broken')
          expect(crossing(curve, 165 + error) - edgeLeftCold).toBeGreaterThanOrEqual(120 - 1e-6);
        if (time?.verdict === 'kept' || time?.verdict === 'broken') proven[time.verdict]++;
      }),
      { numRuns },
    );
    expect(Math.min(proven.kept, proven.broken)).toBeGreaterThan(5);
  });
});

describe('an odd record is judged without a fault', () => {
  it.each(rules)('$name', ({ kind, profile: place = fda }) => {
    const odd: StepRecord[] = [
      record([], {}),
      record([], { start: at(10), end: at(0), asOf: at(5) }),
      record([reading(0, Number.NaN)], {}),
      record([reading(0, 1e300), reading(0, -1e300)], { start: at(50) }),
      record(
        [reading(0, 150, { piece: -1 }), reading(0, 150, { piece: 1.5 }), reading(0, 150, { piece: 1e9 })],
        {},
      ),
    ];
    for (const one of odd) expect(() => judgeStep(kind, one, place)).not.toThrow();
  });
});
