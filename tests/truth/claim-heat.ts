import type { Stage, StageName, Stages } from '#lib/judge/answer.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Profile } from '#lib/limits/profile.ts';
import {
  couldKeep,
  couldMiss,
  type Finding,
  figureFor,
  firstMinute,
  type Group,
  inDegF,
  moments,
  type Scene,
  tiny,
} from './claim.ts';
import { ovenClaims } from './claim-oven.ts';
import { minuteOf } from './clock.ts';
import { anyPlace, either, first, last, places, shortestBetween, timesOf } from './food.ts';
import type { History, Taken } from './history.ts';

/** A temperature to reach, the seconds to stay there, and how far two looks may be apart to count as one stay. */
type Target = { figure: TemperatureFigure; heldS: number; gapMin: number };

const proves = ({ reading }: Taken): boolean =>
  reading.spot === 'coldest' || reading.spot === 'core' || reading.spot === null;

const minute = (look: readonly Taken[]): number => minuteOf(look[0]?.reading.at ?? Number.NaN);

/** It may have been at the target at this look, by the error of the thermometers. */
const couldBeAt = (look: readonly Taken[], { figure }: Target, error: number): boolean =>
  look.every((one) => couldKeep(one, figure, error)) && look.some(proves);

/** It was at the target for sure, and the reading cannot but have shown it. */
const isSurelyAt = (look: readonly Taken[], { figure }: Target, error: number): boolean =>
  look.every((one) => !couldMiss(one, figure, error)) && look.some(proves);

/** The place read stayed at or above the target for the seconds, on the true curve. */
function stayed({ food }: Group, one: Taken, { figure, heldS }: Target, error: number): boolean {
  if (one.where === 'air') return false;
  const from = minuteOf(one.reading.at);
  const level = inDegF(figure, one.reading.unit) - error - tiny;
  const read = one.where === 'coldest' ? places : one.where === 'warmest' ? [] : [one.where];
  return read.every((place) => {
    const [a = Number.POSITIVE_INFINITY, b = from] = timesOf(
      food,
      place,
      'above',
      level,
      from,
      from + heldS / 60,
    );
    return a <= from && b >= from + heldS / 60 - tiny;
  });
}

/**
 * Looks at which it was at the target and stayed there for the seconds demanded, or was found so again after that
 * time: the minutes at which that was so.
 */
function reached(scene: Scene, group: Group, target: Target): number[] {
  const found: number[] = [];
  let run: number[] = [];
  for (const look of moments(group.looks)) {
    const at = minute(look);
    if (!look.every((one) => couldKeep(one, target.figure, scene.error))) run = [];
    if (!couldBeAt(look, target, scene.error)) continue;
    if (at - (run.at(-1) ?? at) > target.gapMin + tiny) run = [];
    run.push(at);
    const noted = look.some((one) => proves(one) && stayed(group, one, target, scene.error));
    if (noted || at - (run[0] ?? at) >= target.heldS / 60 - tiny) found.push(at);
  }
  return found;
}

/** The step ended, and the last look, no more than 5 minutes before, found it below what no look had shown. */
function endedBelow(scene: Scene, group: Group, target: Target): boolean {
  const all = moments(group.looks);
  const end = all.at(-1);
  if (!scene.ended || end === undefined || scene.until - minute(end) > 5 + tiny) return false;
  const isBelow = end.some((one) => couldMiss(one, target.figure, scene.error));
  return isBelow && !all.some((look) => isSurelyAt(look, target, scene.error));
}

/** Covered, turned or stirred, and left to stand so long, in truth. */
function careIsTaken({ truth }: History, standS: number | null): boolean {
  const { covered, stirred, stood_s: stood } = truth;
  return standS === null || (covered === true && stirred === true && (stood ?? 0) >= standS);
}

/** Warming from a figure to a target within a time. */
type Way = { from: TemperatureFigure; target: Target; limit: number; anyPlaceInStep: boolean };

/** It was at the target at a moment no more than the limit after a moment when the place read was still cold. */
function inTime(scene: Scene, group: Group, { from, target, limit, anyPlaceInStep }: Way): boolean {
  const level = figureFor([...group.before, ...group.looks], from, 'most') + scene.error + tiny;
  const begins = firstMinute(scene, group);
  const atStart = anyPlace(group.food, 'below', level, begins, scene.start);
  const outside = anyPlaceInStep ? places : (['surface', 'edge'] as const);
  const inStep = outside.map((place) => timesOf(group.food, place, 'below', level, scene.start, scene.until));
  const cold = either(atStart, ...inStep);
  return reached(scene, group, target).some((at) => shortestBetween(cold, [at, at]) <= limit + tiny);
}

/**
 * At a moment the limit or more after a place of it was already above the start figure a place of it was below the
 * target, which no look before had shown.
 */
function tooLate(scene: Scene, group: Group, { from, target, limit, anyPlaceInStep }: Way): boolean {
  const all = [...group.before, ...group.looks];
  const begins = anyPlaceInStep ? firstMinute(scene, group) : scene.start;
  const left = first(
    anyPlace(group.food, 'above', figureFor(all, from, 'least') - scene.error - tiny, begins, scene.until),
  );
  const shown = moments(group.looks).find((look) => isSurelyAt(look, target, scene.error));
  const until = shown === undefined ? scene.until : Math.min(scene.until, minute(shown));
  const level = figureFor(all, target.figure, 'most') + scene.error + tiny;
  return last(anyPlace(group.food, 'below', level, scene.start, until)) - left >= limit - tiny;
}

type Says = { stage: Stage | undefined; name: StageName; kept: (group: Group) => boolean };

function claimed(scene: Scene, { stage, name, kept }: Says, broken: (group: Group) => boolean): Finding[] {
  const say = (piece: number | null, words: string): Finding[] =>
    stage === undefined ? [] : [{ stage: name, verdict: stage.verdict, piece, words }];
  if (stage?.verdict === 'kept') {
    if (!scene.anyRead) return say(null, 'nothing was read');
    return scene.groups
      .filter((group) => !kept(group))
      .flatMap(({ piece }) => say(piece, 'this piece did not'));
  }
  if (stage?.verdict === 'broken' && !scene.groups.some(broken)) return say(null, 'no piece was so');
  return [];
}

/** The sentences of docs/judge.md 4.3 on the true curve. */
export function reheatClaims(scene: Scene, stages: Stages): Finding[] {
  const { figures } = scene.history.profile;
  const { facts, food } = scene.history.record;
  const { route } = facts;
  if (route === 'roast' && food.class === 'intact_roast' && figures.reheat_roast !== null)
    return figures.roast_chart === null ? [] : roastClaims(scene, stages, figures.roast_chart);
  const way =
    route === 'microwave'
      ? figures.reheat_microwave
      : route === 'commercial'
        ? figures.reheat_commercial
        : figures.reheat_conventional;
  if (way === null) return [];
  const target: Target = { figure: way.target, heldS: way.held_s, gapMin: 5 };
  const findings = claimed(
    scene,
    {
      stage: stages.temperature,
      name: 'temperature',
      kept: (group) => careIsTaken(scene.history, way.stand_s) && reached(scene, group, target).length > 0,
    },
    (group) => !careIsTaken(scene.history, way.stand_s) || endedBelow(scene, group, target),
  );
  const { reheat_from: from, reheat_within: within } = figures;
  if (from === null || within === null) return findings;
  const timed: Way = { from, target, limit: within.minutes, anyPlaceInStep: false };
  return [
    ...findings,
    ...claimed(
      scene,
      { stage: stages.time, name: 'time', kept: (group) => inTime(scene, group, timed) },
      (group) => tooLate(scene, group, timed),
    ),
  ];
}

type Chart = NonNullable<Profile['figures']['roast_chart']>;

/** The rows that this food is cooked by, and the seconds that it has to stand; null = no figure. */
export function chartOf({ profile, record }: History): { chart: Chart; standS: number | null } | null {
  const { cook, cook_microwave: microwave, roast_chart: roast } = profile.figures;
  if (record.facts.method === 'microwave' && microwave !== null)
    return { chart: microwave.chart, standS: microwave.stand_s };
  const chart = (record.food.class === 'intact_roast' ? roast : null) ?? cook[record.food.class];
  return chart === undefined ? null : { chart, standS: null };
}

const rowTarget = (row: Chart['rows'][number], { rows: _, ...cited }: Chart): Target => ({
  figure: { ...cited, comparison: 'at_or_above', value: { degF: row.degF, degC: row.degC } },
  heldS: row.held_s,
  gapMin: 30,
});

/** Some row was met; or the step ended below the lowest. */
export function chartClaims(
  scene: Scene,
  says: { stage: Stage | undefined; name: StageName },
  chart: Chart,
  standS: number | null = null,
): Finding[] {
  const rows = chart.rows.map((row) => rowTarget(row, chart));
  const lowest = rows.reduce((a, b) => ((b.figure.value.degF ?? 0) < (a.figure.value.degF ?? 0) ? b : a));
  const isCared = careIsTaken(scene.history, standS);
  return claimed(
    scene,
    { ...says, kept: (group) => isCared && rows.some((row) => reached(scene, group, row).length > 0) },
    (group) => !isCared || endedBelow(scene, group, lowest),
  );
}

/** A roast by its chart and by the oven in which it truly was. */
const roastClaims = (scene: Scene, stages: Stages, chart: Chart): Finding[] => [
  ...chartClaims(scene, { stage: stages.temperature, name: 'temperature' }, chart),
  ...ovenClaims(scene.history, stages),
];

/** The sentences of docs/judge.md 4.4 on the true curve. */
export function cookClaims(scene: Scene, stages: Stages): Finding[] {
  const { figures } = scene.history.profile;
  const asked = chartOf(scene.history);
  const findings: Finding[] = [];
  if (asked !== null) {
    const says = { stage: stages.temperature, name: 'temperature' } as const;
    findings.push(...chartClaims(scene, says, asked.chart, asked.standS));
    if (asked.chart === figures.roast_chart) findings.push(...ovenClaims(scene.history, stages));
  }
  const { come_up: up } = figures;
  if (up === null) return findings;
  const target: Target = { figure: up.to, heldS: 0, gapMin: 5 };
  const way: Way = { from: up.from, target, limit: up.within.minutes, anyPlaceInStep: true };
  return [
    ...findings,
    ...claimed(
      scene,
      { stage: stages.come_up, name: 'come_up', kept: (group) => inTime(scene, group, way) },
      (group) => tooLate(scene, group, way),
    ),
  ];
}
