import type { Stages } from '#lib/judge/answer.ts';
import { claimedOf, type Finding, fits, type Scene, sceneOf, type TimeFigure } from './claim.ts';
import { coolingBetween } from './claim-cooling.ts';
import { chartClaims } from './claim-heat.ts';
import { minuteOf, minuteOrNull } from './clock.ts';

const cannot = (stages: Stages, name: 'cooling' | 'final_cook'): Finding[] => {
  const verdict = stages[name]?.verdict;
  const says = verdict === 'kept' || verdict === 'broken';
  return says ? [{ stage: name, verdict, piece: null, words: 'that part has not begun' }] : [];
};

/** The sentences of docs/judge.md 4.8 on the true curve: each part in its own stretch of the step. */
export function partClaims(scene: Scene, stages: Stages): Finding[] {
  const { record, truth } = scene.history;
  const rule = scene.history.profile.figures.noncontinuous;
  if (rule === null) return [];
  const isWritten = truth.written === true && truth.approved === true;
  return [
    ...claimedOf('procedure', stages, isWritten, 'the procedure'),
    ...heatingClaims(scene, stages, rule.initial_heating),
    ...coolingClaims(scene, stages),
    ...(record.facts.final_from !== null && seen(scene, truth.final_from)
      ? finalClaims(scene, stages)
      : cannot(stages, 'final_cook')),
  ];
}

const seen = ({ until }: Scene, at: number | null | undefined): boolean =>
  (minuteOrNull(at) ?? Number.POSITIVE_INFINITY) <= until;

function heatingClaims(scene: Scene, stages: Stages, within: TimeFigure): Finding[] {
  const { record, truth } = scene.history;
  const [from, to] = [minuteOrNull(truth.heat_from) ?? 0, minuteOrNull(truth.heat_to) ?? 0];
  const isOff = seen(scene, truth.heat_to);
  const isShort = fits((isOff ? to : minuteOf(record.asOf)) - from, within);
  const verdict = stages.initial_heating?.verdict;
  if ((verdict === 'kept' && !(isOff && isShort)) || (verdict === 'broken' && isShort))
    return [{ stage: 'initial_heating', verdict, piece: null, words: 'the first heat took another time' }];
  return [];
}

function coolingClaims(scene: Scene, stages: Stages): Finding[] {
  const { record, truth } = scene.history;
  const isOver = seen(scene, truth.final_from);
  const between = seen(scene, truth.heat_to)
    ? sceneOf(scene.history, {
        start: truth.heat_to ?? null,
        end: (isOver ? truth.final_from : record.end) ?? null,
      })
    : null;
  if (between === null) return cannot(stages, 'cooling');
  const groups = between.anyRead ? between.groups.map((group) => ({ ...group, before: [] })) : [];
  const { isKept, isBroken } = coolingBetween({ ...between, groups });
  const verdict = stages.cooling?.verdict;
  if ((verdict === 'kept' && !isKept) || (verdict === 'broken' && !isBroken))
    return [{ stage: 'cooling', verdict, piece: null, words: 'it did not cool so between the heats' }];
  return [];
}

function finalClaims(scene: Scene, stages: Stages): Finding[] {
  const { record, truth, profile } = scene.history;
  const { cook, roast_chart: roast, noncontinuous: rule } = profile.figures;
  const own = (record.food.class === 'intact_roast' ? roast : null) ?? cook[record.food.class];
  const chart = rule?.final_chart ?? own;
  const last = sceneOf(scene.history, { start: truth.final_from ?? null, end: record.end });
  if (chart === undefined || last === null) return cannot(stages, 'final_cook');
  return chartClaims(last, { stage: stages.final_cook, name: 'final_cook' }, chart);
}
