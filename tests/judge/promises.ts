import fc from 'fast-check';
import { expect } from 'vitest';
import type { Stage, StageName, Stages } from '#lib/judge/answer.ts';
import { low } from '#lib/judge/compare.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { JudgedReading, RuleKind, StepRecord } from '#lib/judge/record.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { at, fda, reading, record } from './records.ts';

/**
 * The properties of docs/judge.md, section 6, as promises that a rule is plugged into. Soundness needs a true
 * curve and stands in `soundness.ts`.
 */
export type Rule = {
  name: string;
  kind: RuleKind;
  records: fc.Arbitrary<StepRecord>;
  profile?: Profile; // missing = the FDA Food Code
};

const judgeBy =
  ({ kind, profile = fda }: Pick<Rule, 'kind' | 'profile'>) =>
  (one: StepRecord): Stages =>
    judgeStep(kind, one, profile);
const verdicts = (stages: Stages) =>
  stageEntries(stages).map(([name, { verdict }]) => [name, verdict] as const);

/** Values around every figure of the rules, and some far from all. */
const values = {
  degF: [
    35, 40.9, 41, 41.1, 49.9, 50, 50.1, 69.9, 70, 70.1, 100, 129.9, 130, 134.9, 135, 135.1, 150, 164.9, 165,
    165.1, 180,
  ],
  degC: [
    2, 4.9, 5, 5.1, 9.9, 10, 10.1, 20.9, 21, 21.1, 40, 53.9, 54, 56.9, 57, 57.1, 59.9, 60, 60.1, 65, 73.9, 74,
    74.1, 82,
  ],
};
const temperature = fc.oneof(
  fc.constantFrom(...values.degF).map((value) => ({ value, unit: 'degF' as const })),
  fc.constantFrom(...values.degC).map((value) => ({ value, unit: 'degC' as const })),
);
const rarely = <T>(thing: T, otherwise: T) =>
  fc.oneof({ weight: 7, arbitrary: fc.constant(otherwise) }, { weight: 1, arbitrary: fc.constant(thing) });

export const anyReading: fc.Arbitrary<JudgedReading> = fc
  .record({
    minutes: fc.integer({ min: -30, max: 420 }),
    temperature,
    spot: fc.constantFrom('edge', 'core', 'surface', 'coldest', 'warmest', 'air', null),
    piece: fc.constantFrom(null, 1, 2),
    held_s: fc.constantFrom(null, 0, 15, 30),
    source: fc.constantFrom('hand' as const, 'logger' as const),
    suspect: rarely(true, false),
    correction: rarely<number | null>(-1.5, null),
    probe: fc.constantFrom(null, 'a', 'b'),
  })
  .map(({ minutes, temperature: { value, unit }, ...told }) => reading(minutes, value, { ...told, unit }));

/** Records with a start at noon; some ended, some seen before their last reading. */
export const recordsOf = (
  facts: fc.Arbitrary<StepRecord['facts']>,
  classes: readonly FoodClass[] = ['intact_roast', 'beef_whole'],
): fc.Arbitrary<StepRecord> =>
  fc
    .record({
      readings: fc.array(anyReading, { maxLength: 14 }),
      ended: fc.option(fc.integer({ min: 0, max: 420 })),
      seen: fc.integer({ min: 0, max: 450 }),
      plan: fc.option(fc.constantFrom(60, 120)),
      pieces: fc.constantFrom(null, 2, 3),
      foodClass: fc.constantFrom(...classes),
      facts,
    })
    .map(({ readings, ended, seen, plan, pieces, foodClass, facts: told }) =>
      record(readings, {
        start: at(0),
        end: ended === null ? null : at(ended),
        asOf: at(seen),
        planIntervalMin: plan,
        pieces,
        class: foodClass,
        facts: told,
      }),
    );

const heats: ReadonlySet<RuleKind> = new Set(['reheat', 'cook', 'noncontinuous']);

/** How often was it looked at: a reading more fills a gap, and one less makes one. */
const asksHowOften: ReadonlySet<StageName> = new Set(['house_plan_interval', 'record_interval']);

/** 2a. Adding a reading of the step never turns broken into kept, unless that reading itself proves the target. */
export function addingNeverMends(rule: Rule): void {
  const { kind, records } = rule;
  const judge = judgeBy(rule);
  fc.assert(
    fc.property(records, anyReading, (before, added) => {
      // A reading that itself proves a target of heating may mend; the lowest target of any row is 130 °F, 54 °C.
      const proves = heats.has(kind) && low(added) >= (added.unit === 'degF' ? 130 : 54);
      // The start of time control rests on the last look before the food left: a later one replaces it (4.6).
      const replaces = kind === 'time_control' && added.at <= (before.facts.removed_at ?? at(0));
      fc.pre(added.at >= at(0) && !proves && !replaces);
      const after = judge({ ...before, readings: [...before.readings, added] });
      for (const [name, verdict] of verdicts(judge(before)))
        if (verdict === 'broken' && !asksHowOften.has(name)) expect(after[name]?.verdict).not.toBe('kept');
    }),
    { numRuns: 400 },
  );
}

/** 2b. Taking a reading away never turns anything into kept, where `passes` says that it spoke for the kitchen. */
export function removingNeverMends(
  rule: Rule,
  passes: (one: JudgedReading, place: number, record: StepRecord) => boolean,
): void {
  const judge = judgeBy(rule);
  fc.assert(
    fc.property(rule.records, fc.nat(), (before, pick) => {
      const end = Math.min(before.end ?? before.asOf, before.asOf);
      const isOfStep = (one: JudgedReading): boolean =>
        one.at >= at(0) && one.at <= end && one.spot !== 'air';
      const candidates = before.readings.flatMap((one, place) =>
        isOfStep(one) && passes(one, place, before) ? [place] : [],
      );
      fc.pre(candidates.length > 0);
      const place = candidates[pick % candidates.length];
      const gone = before.readings[place ?? -1];
      const readings = before.readings.filter((_, index) => index !== place);
      fc.pre(gone !== undefined && readings.some((one) => one.piece === gone.piece && isOfStep(one)));
      const was = judge(before);
      for (const [name, verdict] of verdicts(judge({ ...before, readings })))
        if (verdict === 'kept') expect([name, was[name]?.verdict]).toEqual([name, 'kept']);
    }),
    { numRuns: 300, maxSkipsPerRun: 500 },
  );
}

const comparable = ({ rests_on: _, ...stage }: Stage) => stage;
const withoutPlaces = (stages: Stages) =>
  Object.fromEntries(stageEntries(stages).map(([name, stage]) => [name, comparable(stage)]));

/** 3a. The order of entry does not matter, and renaming probes changes nothing. */
export function orderAndNamesDoNotMatter(rule: Rule): void {
  const { records } = rule;
  const judge = judgeBy(rule);
  const shuffled = records.chain((one) =>
    fc
      .shuffledSubarray([...one.readings], { minLength: one.readings.length })
      .map((readings): [StepRecord, StepRecord] => [one, { ...one, readings }]),
  );
  fc.assert(
    fc.property(shuffled, ([one, other]) => {
      const renamed = other.readings.map((each) => ({ ...each, probe: `${each.probe} again` }));
      const expected = withoutPlaces(judge(one));
      expect(withoutPlaces(judge({ ...other, readings: renamed }))).toEqual(expected);
    }),
    { numRuns: 300 },
  );
}

const moved = (value: number | null | undefined, by: number) =>
  value === null || value === undefined ? value : value + by;

const instants = ['prepared_at', 'removed_at', 'gone_at', 'heat_from', 'heat_to', 'final_from'] as const;

const movedFacts = (facts: StepRecord['facts'], by: number): StepRecord['facts'] => ({
  ...facts,
  ...Object.fromEntries(instants.map((name) => [name, moved(facts[name], by)])),
});

function movedStage(stage: Stage, by: number): Stage {
  const next = stage.next === null ? null : { ...stage.next, by: moved(stage.next.by, by) ?? null };
  const first = stage.first_bad === undefined ? {} : { first_bad: moved(stage.first_bad, by) ?? null };
  return { ...stage, deadline: moved(stage.deadline, by) ?? null, next, ...first };
}

/** 3b. Shifting all instants by one amount changes no length and no verdict. */
export function shiftingChangesNothing(rule: Rule): void {
  const { records } = rule;
  const judge = judgeBy(rule);
  fc.assert(
    fc.property(records, fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), (one, by) => {
      const later: StepRecord = {
        ...one,
        start: moved(one.start, by) ?? null,
        end: moved(one.end, by) ?? null,
        asOf: one.asOf + by,
        facts: movedFacts(one.facts, by),
        readings: one.readings.map((each) => ({ ...each, at: each.at + by })),
      };
      const expected = stageEntries(judge(one)).map(([name, stage]) => [name, movedStage(stage, by)]);
      expect(judge(later)).toEqual(Object.fromEntries(expected));
    }),
    { numRuns: 300 },
  );
}

/** 4. A later moment never turns broken into another verdict; kept stays kept for a step that has ended. */
export function laterNeverMends(rule: Rule): void {
  const { records } = rule;
  const judge = judgeBy(rule);
  fc.assert(
    fc.property(records, fc.integer({ min: 1, max: 600 }), (one, minutes) => {
      const later = judge({ ...one, asOf: one.asOf + minutes * 60_000 });
      const isEnded = one.end !== null && one.end <= one.asOf;
      for (const [name, verdict] of verdicts(judge(one)))
        if (verdict === 'broken' || (verdict === 'kept' && isEnded))
          expect(later[name]?.verdict).toBe(verdict);
    }),
    { numRuns: 400 },
  );
}

/** How often any member of any reading is looked at while the record is judged. */
function looksInto(rule: Pick<Rule, 'kind' | 'profile'>, one: StepRecord): number {
  let count = 0;
  const watched = one.readings.map(
    (each) =>
      new Proxy(each, {
        get: (target, name) => {
          count++;
          return Reflect.get(target, name);
        },
      }),
  );
  judgeBy(rule)({ ...one, readings: watched });
  return count;
}

/** 5. Twice the readings cost at most about twice the looks, whatever they are. Counted, not timed. */
export function costIsLinear(
  rule: Pick<Rule, 'kind' | 'profile'>,
  night: (count: number) => StepRecord,
): void {
  const [once, twice] = [looksInto(rule, night(500)), looksInto(rule, night(1000))];
  expect(once).toBeGreaterThan(500);
  expect(twice / once).toBeLessThan(2.1);
}
