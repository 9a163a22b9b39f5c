import { judgeStep } from '#lib/judge/judge.ts';
import type { StepRecord } from '#lib/judge/record.ts';
import { stageNames } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import { ratioLine } from './ratio.ts';
import { type AskedStep, benchKinds, mixedSteps } from './steps.ts';
import { inTurns } from './turns.ts';

const BATCHES = 2000;
const READINGS = 500;
const goal = 5;

/** The other side: one pass over the same records that only compares each value with the limit of its unit. */
function barePass({ readings }: StepRecord, limit: { degF: number; degC: number }): number {
  let below = 0;
  for (const reading of readings) if (reading.value < limit[reading.unit]) below += 1;
  return below;
}

/** What was found, added up: so that no loop can be left out for want of use. */
const found = { ours: 0, bare: 0 };

function judgeAll(steps: readonly AskedStep[], limits: Profile): void {
  for (const { kind, record } of steps) found.ours += stageNames(judgeStep(kind, record, limits)).length;
}

export function passAll(steps: readonly AskedStep[]): void {
  for (const { record, limit } of steps) found.bare += barePass(record, limit);
}

const sidesOf = (steps: readonly AskedStep[], limits: Profile) => ({
  ours: () => judgeAll(steps, limits),
  bare: () => passAll(steps),
});

/** A million readings over 2,000 batches of mixed kinds, judged, against one bare pass; then each kind by itself. */
export function judging(): string[] {
  const limits = profile('fda_2022');
  if (!limits) throw new Error('bench: profile fda_2022 is missing');
  const steps = mixedSteps(BATCHES, READINGS);
  const names = { ours: 'judge', bare: 'bare pass' };
  const line = (what: string, those: readonly AskedStep[]): string => {
    const { ours, bare } = inTurns(sidesOf(those, limits), names, { warmUp: 4, samples: 15 });
    return ratioLine(what, ours, bare, 0.5, goal, 'ms');
  };
  const lines = [
    line(`judging ${BATCHES * READINGS} readings of ${BATCHES} batches / one bare pass over them`, steps),
    ...benchKinds.map((kind) =>
      line(
        `· of these only ${kind}`,
        steps.filter((step) => step.kind === kind),
      ),
    ),
  ];
  if (found.ours === 0 || found.bare === 0) throw new Error('bench: a side found nothing');
  return lines;
}
