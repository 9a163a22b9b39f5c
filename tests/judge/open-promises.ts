import fc from 'fast-check';
import { expect } from 'vitest';
import type { StageName } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, JudgedReading, StepRecord } from '#lib/judge/record.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { Rule } from './promises.ts';
import { fda, reading } from './records.ts';

/** What somebody can still note of a step that goes on, or note otherwise; instants that have not come stand for now. */
const noted = ({ facts, asOf }: StepRecord, at: number, oven: 'still_dry' | 'high_humidity'): Facts => ({
  ...facts,
  covered: true,
  stirred: true,
  stood_s: 120,
  prepared_at: facts.prepared_at == null ? facts.prepared_at : Math.min(facts.prepared_at, asOf),
  gone_at: Math.min(facts.gone_at ?? asOf, asOf),
  heat_to: Math.min(facts.heat_to ?? asOf, asOf),
  final_from: Math.min(facts.final_from ?? at, at),
  roast_cook: facts.roast_cook === 'not_shown' ? 'kept' : facts.roast_cook,
  oven: facts.oven ?? oven,
  oven_temp: facts.oven_temp ?? 350,
  mass_lb: facts.mass_lb ?? 12,
});

type Look = { seconds: number; degF: number; spot: 'core' | 'edge' };
const [cold, hot] = [20, 212];

/** Looks that speak for the kitchen as well as looks can: at once, or in the next seconds. */
const looks: Look[][] = [
  [],
  ...[0, 1].flatMap((seconds) =>
    [cold, hot].flatMap((degF) =>
      (['core', 'edge'] as const).map((spot): Look[] => [{ seconds, degF, spot }]),
    ),
  ),
  [
    { seconds: 1, degF: hot, spot: 'core' },
    { seconds: 2, degF: cold, spot: 'core' },
  ],
  [
    { seconds: 1, degF: cold, spot: 'edge' },
    { seconds: 2, degF: hot, spot: 'core' },
  ],
];

/** What each of so many pieces is given to read, piece by piece. */
function* eachItsOwn(pieces: number): Generator<Look[][]> {
  if (pieces === 0) yield [];
  else for (const others of eachItsOwn(pieces - 1)) for (const own of looks) yield [...others, own];
}

/** The same looks for every piece first, which mostly is enough; then every other sharing out. */
function* sharedOut(pieces: number): Generator<Look[][]> {
  for (const same of looks) yield Array<Look[]>(pieces).fill(same);
  yield* eachItsOwn(pieces);
}

/** How the step can go on from here: each piece that was read is read once or twice more or not, and then it ends. */
function* ways(one: StepRecord): Generator<StepRecord> {
  const seen = one.readings.filter(({ at, spot }) => at <= one.asOf && spot !== 'air');
  const inStep = seen.filter(({ at }) => at >= (one.start ?? 0));
  const read = [...new Set((inStep.length > 0 ? inStep : seen).map(({ piece }) => piece))];
  const pieces = read.length === 0 ? [null] : read;
  for (const shares of sharedOut(pieces.length)) {
    const taken = pieces.flatMap((piece, n) =>
      (shares[n] ?? []).map(
        ({ seconds, degF, spot }): JudgedReading => ({
          ...reading(0, degF, { spot, piece, held_s: 99_999, source: 'logger' }),
          at: one.asOf + seconds * 1000,
        }),
      ),
    );
    const asOf = one.asOf + 2000;
    const later = { ...one, asOf, readings: [...one.readings.filter(({ at }) => at <= one.asOf), ...taken] };
    const end = Math.max(one.asOf, ...taken.map(({ at }) => at));
    const facts = [
      one.facts,
      noted(one, one.asOf, 'still_dry'),
      noted(one, one.asOf + 1000, 'high_humidity'),
    ];
    for (const told of facts) {
      yield { ...later, facts: told };
      yield { ...later, facts: told, end };
    }
  }
}

/**
 * Open is no empty word (docs/judge.md, section 1): of a stage that is not shown and open some way on makes it kept.
 */
export function openCanStillBeKept({ kind, records, profile = fda }: Rule, most: number): void {
  let seen = 0;
  fc.assert(
    fc.property(records, (one) => {
      const open = stageEntries(judgeStep(kind, one, profile)).filter(
        ([, stage]) => stage.verdict === 'not_shown' && stage.open,
      );
      fc.pre(open.length > 0);
      seen++;
      const canBeKept = (name: StageName): boolean => {
        for (const way of ways(one)) if (judgeStep(kind, way, profile)[name]?.verdict === 'kept') return true;
        return false;
      };
      for (const [name] of open) expect([name, canBeKept(name)]).toEqual([name, true]);
    }),
    { numRuns: most, maxSkipsPerRun: 200 },
  );
  expect(seen).toBeGreaterThan(most / 2);
}
