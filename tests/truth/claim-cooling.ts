import type { Stage, Stages } from '#lib/judge/answer.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { CoolingStage } from '#lib/limits/profile.ts';
import { type Finding, figureFor, firstMinute, type Group, inDegF, type Scene, tiny } from './claim.ts';
import { minuteOf } from './clock.ts';
import { anyPlace, either, first, last, shortestBetween, timesOf } from './food.ts';

/** One stage with the figures that count for the readings of this piece. */
type Clock = {
  stage: CoolingStage;
  from: CoolingStage['to'] | null;
  made: number | null;
  leftHeatAt?: number; // minute: the end of a heating before it
};

/** What each stage of this food counts from: a figure, or the minute at which it was made. */
function clocks({ history }: Scene): Clock[] {
  const { cooling, cooling_ambient: ambient } = history.profile.figures;
  const { facts } = history.record;
  if (facts.ingredients === 'ambient' && ambient !== null) {
    const at = facts.prepared_at ?? null;
    return [{ stage: ambient, from: null, made: at === null ? null : minuteOf(at) }];
  }
  const start = cooling[0]?.from ?? null;
  return cooling.map((stage, place) => {
    const previous = stage.counted === 'from_previous' ? cooling[place - 1]?.to : undefined;
    return { stage, from: previous ?? stage.from ?? start, made: null };
  });
}

/**
 * It was at or below X at a moment no more than the limit after a moment when a place of it was still at or above
 * the start figure, and no later look of this cooling was above X.
 */
function isKept(scene: Scene, group: Group, { stage, from, made, leftHeatAt }: Clock): boolean {
  const { food } = group;
  const all = [...group.before, ...group.looks];
  const to = figureFor(all, stage.to, 'most') + scene.error + tiny;
  const above = all.filter(({ degF, reading }) => degF > inDegF(stage.to, reading.unit) + scene.error + tiny);
  const lastAbove = Math.max(...above.map(({ reading }) => minuteOf(reading.at)), Number.NEGATIVE_INFINITY);
  const begins = Math.max(firstMinute(scene, group), lastAbove);
  const reached = timesOf(food, 'core', 'below', to, begins, scene.until);
  const limit = stage.within.minutes + tiny;
  if (from === null) return made !== null && shortestBetween([made, made], reached) <= limit;
  const start = figureFor(all, from, 'least') - scene.error - tiny;
  const hot = anyPlace(food, 'above', start, firstMinute(scene, group), scene.until);
  const begun = leftHeatAt === undefined ? hot : either(hot, [leftHeatAt, leftHeatAt]);
  return shortestBetween(begun, reached) <= limit;
}

/**
 * At a moment the whole limit or more after it was already below the start figure a place of it was still, or
 * again, above X.
 */
function isBroken(scene: Scene, group: Group, { stage, from, made }: Clock): boolean {
  const { food } = group;
  const all = [...group.before, ...group.looks];
  const to = figureFor(all, stage.to, 'least') - scene.error - tiny;
  const begins = firstMinute(scene, group);
  const above = last(anyPlace(food, 'above', to, begins, scene.until));
  if (from === null) return made !== null && above - made >= stage.within.minutes - tiny;
  const start = figureFor(all, from, 'most') + scene.error + tiny;
  const left = first(timesOf(food, 'core', 'below', start, begins, scene.until));
  return above - left >= stage.within.minutes - tiny;
}

/** The earliest possible start governs: at `deadline - limit` a place of it was still at or above the start figure. */
function isEarlyEnough(scene: Scene, clock: Clock, stage: Stage): boolean {
  if (stage.deadline === null) return true;
  const from = minuteOf(stage.deadline) - clock.stage.within.minutes;
  if (clock.from === null) return Math.abs(from - (clock.made ?? Number.NaN)) < tiny;
  const { from: figure } = clock;
  return scene.groups.some((group) => {
    const start = figureFor([...group.before, ...group.looks], figure, 'least') - scene.error - tiny;
    return anyPlace(group.food, 'above', start, from, from).length > 0;
  });
}

/** The sentences of docs/judge.md 4.2 on the true curve. */
export function coolingClaims(scene: Scene, stages: Stages): Finding[] {
  const findings: Finding[] = [];
  const all = clocks(scene);
  for (const [name, stage] of stageEntries(stages)) {
    const clock = all.find((one) => one.stage.name === name);
    const say = (piece: number | null, words: string): void => {
      findings.push({ stage: name, verdict: stage.verdict, piece, words });
    };
    if (clock === undefined) {
      if (stage.verdict === 'kept' || stage.verdict === 'broken')
        say(null, 'this stage is not in the profile');
      continue;
    }
    if (stage.verdict === 'kept') {
      if (scene.groups.length === 0) say(null, 'nothing was read');
      for (const group of scene.groups)
        if (!isKept(scene, group, clock)) say(group.piece, 'it took longer, or was above the figure again');
    }
    if (stage.verdict === 'broken' && !scene.groups.some((group) => isBroken(scene, group, clock)))
      say(null, 'no place was above the figure so long after the start');
    if (!isEarlyEnough(scene, clock, stage)) say(null, 'the clock starts later than the food can have');
  }
  return findings;
}

/** The same of a cooling between two heatings: every stage of every piece that was read in it, or one of them. */
export function coolingBetween(scene: Scene): { isKept: boolean; isBroken: boolean } {
  const all = clocks(scene).map((clock) => ({ ...clock, leftHeatAt: scene.start }));
  const pairs = scene.groups.flatMap((group) => all.map((clock) => ({ group, clock })));
  return {
    isKept: pairs.length > 0 && pairs.every(({ group, clock }) => isKept(scene, group, clock)),
    isBroken: pairs.some(({ group, clock }) => isBroken(scene, group, clock)),
  };
}
