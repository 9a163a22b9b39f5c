import type { StageName, Stages } from '#lib/judge/answer.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Figures, TimeStart } from '#lib/limits/profile.ts';
import {
  claimedOf,
  couldKeep,
  couldMiss,
  type Finding,
  fits,
  moments,
  type Scene,
  sceneOf,
  tiny,
} from './claim.ts';
import { minuteOf, minuteOrNull } from './clock.ts';
import type { Taken } from './history.ts';

const isHot = ({ comparison }: TemperatureFigure): boolean =>
  comparison === 'at_or_above' || comparison === 'above';

const couldMeet = (look: readonly Taken[], { figure }: TimeStart, error: number): boolean =>
  look.every((one) => couldKeep(one, figure, error)) &&
  look.some(({ reading }) => reading.spot !== (isHot(figure) ? 'warmest' : 'coldest'));

const couldFail = (look: readonly Taken[], { figure }: TimeStart, error: number): boolean =>
  look.some((one) => couldMiss(one, figure, error));

/** Of each piece that was read, the last look before it left control; empty where it was only read later. */
function lastLooks({ history, until }: Scene, removed: number): Taken[][] {
  return [...history.groups.keys()].flatMap((piece) => {
    const seen = history.taken
      .filter(
        ({ reading, where }) => reading.piece === piece && where !== 'air' && minuteOf(reading.at) <= until,
      )
      .sort((a, b) => a.reading.at - b.reading.at);
    if (seen.length === 0) return [];
    return [moments(seen.filter(({ reading }) => minuteOf(reading.at) <= removed)).at(-1) ?? []];
  });
}

type Form = NonNullable<NonNullable<Figures['time_control']>['four_hours']>;

/** One step out of control, in minutes: when it left, and how long it was out as far as is seen. */
type Out = { removed: number; length: number; isGone: boolean };

function outOf({ history }: Scene): Out | null {
  const removed = minuteOrNull(history.truth.removed_at);
  const gone = minuteOrNull(history.truth.gone_at);
  const now = minuteOf(history.record.asOf);
  if (removed === null) return null;
  const isGone = gone !== null && gone <= now;
  return { removed, length: (isGone ? gone : now) - removed, isGone };
}

/** The sentences of docs/judge.md 4.6 on the true curve, and on what was truly written and marked. */
export function timeClaims(scene: Scene, stages: Stages): Finding[] {
  const { truth, profile } = scene.history;
  const rule = profile.figures.time_control;
  const form = truth.mode === '6h' ? rule?.six_hours : rule?.four_hours;
  const out = outOf(scene);
  const findings = [
    ...claimedOf('procedure', stages, truth.written_procedure === true, 'the procedure'),
    ...claimedOf('marking', stages, truth.marked === true, 'the mark'),
  ];
  if (form === null || form === undefined || out === null) return findings;
  const starts = form.starts.filter(({ only }) => only === undefined || only === truth.starts_as);
  const looks = lastLooks(scene, out.removed);
  return [
    ...findings,
    ...lengthClaims(stages, out, form),
    ...startClaims(scene, stages, looks, starts),
    ...conditionClaims(scene, stages, looks, { form, starts }),
  ];
}

const finding = (stage: StageName, stages: Stages, words: string): Finding[] => {
  const verdict = stages[stage]?.verdict;
  return verdict === undefined ? [] : [{ stage, verdict, piece: null, words }];
};

/** Served or thrown away no later than the time after it left control; or the time was over. */
function lengthClaims(stages: Stages, { removed, length, isGone }: Out, { within }: Form): Finding[] {
  const { time } = stages;
  const isInTime = fits(length, within);
  if (time?.verdict === 'kept' && !(isGone && isInTime))
    return finding('time', stages, 'it was not gone in time');
  if (time?.verdict === 'broken' && isInTime) return finding('time', stages, 'the time was not over');
  const deadline = minuteOrNull(time?.deadline);
  const isOther = deadline !== null && Math.abs(deadline - removed - within.minutes) > tiny;
  return isOther ? finding('time', stages, 'another deadline') : [];
}

/** Each piece was cold or hot enough at its last look; or one was neither. */
function startClaims(
  { error }: Scene,
  stages: Stages,
  looks: readonly Taken[][],
  starts: readonly TimeStart[],
): Finding[] {
  const isStarted =
    looks.length > 0 && looks.every((look) => starts.some((one) => couldMeet(look, one, error)));
  const isNot = looks.some((look) => look.length > 0 && starts.every((one) => couldFail(look, one, error)));
  if (stages.start?.verdict === 'kept' && !isStarted)
    return finding('start', stages, 'neither cold nor hot enough');
  if (stages.start?.verdict === 'broken' && !isNot)
    return finding('start', stages, 'each piece was cold or hot enough');
  return [];
}

/** How warm it may get: asked of the six hours, and of a start that was taken on that condition. */
function conditionClaims(
  scene: Scene,
  stages: Stages,
  looks: readonly Taken[][],
  { form, starts }: { form: Form; starts: readonly TimeStart[] },
): Finding[] {
  const figure = form.stays ?? starts.find(({ stays }) => stays !== undefined)?.stays ?? null;
  if (figure === null) return [];
  const free = starts.filter(({ stays }) => stays === undefined);
  const isFree =
    looks.length > 0 && looks.every((look) => free.some((one) => couldMeet(look, one, scene.error)));
  if (stages.warmth?.verdict === 'not_applicable' && (form.stays !== null || !isFree))
    return finding('warmth', stages, 'its start asks for it');
  return warmthClaims(scene, stages, figure);
}

/** No place read was warmer than the figure while it was out. */
function warmthClaims({ history, error }: Scene, stages: Stages, figure: TemperatureFigure): Finding[] {
  const { record, truth } = history;
  const gone = truth.gone_at ?? null;
  const end = gone !== null && record.end !== null ? Math.min(gone, record.end) : (gone ?? record.end);
  const out = sceneOf(history, { start: truth.removed_at ?? null, end });
  const looks = out?.anyRead ? out.groups.map((group) => group.looks) : [];
  const isKept =
    looks.length > 0 &&
    looks.every(
      (look) =>
        look.some(({ reading }) => reading.spot !== 'coldest') &&
        look.every((one) => couldKeep(one, figure, error)),
    );
  const isBroken = looks.some((look) => look.some((one) => couldMiss(one, figure, error)));
  const verdict = stages.warmth?.verdict;
  if ((verdict === 'kept' && !isKept) || (verdict === 'broken' && !isBroken))
    return [{ stage: 'warmth', verdict, piece: null, words: 'it was not so while it was out' }];
  return [];
}
