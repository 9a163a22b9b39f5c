import type { Stages } from '#lib/judge/answer.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { TimeStart } from '#lib/limits/profile.ts';
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

/** The sentences of docs/judge.md 4.6 on the true curve, and on what was truly written and marked. */
export function timeClaims(scene: Scene, stages: Stages): Finding[] {
  const { history, error } = scene;
  const { record, truth } = history;
  const findings = [
    ...claimedOf('procedure', stages, truth.written_procedure === true, 'the procedure'),
    ...claimedOf('marking', stages, truth.marked === true, 'the mark'),
  ];
  const rule = history.profile.figures.time_control;
  const form = truth.mode === '6h' ? rule?.six_hours : rule?.four_hours;
  const removed = minuteOrNull(truth.removed_at);
  if (form === null || form === undefined || removed === null) return findings;
  const gone = minuteOrNull(truth.gone_at);
  const now = minuteOf(record.asOf);
  const isGone = gone !== null && gone <= now;
  const length = (isGone ? gone : now) - removed;
  const { time } = stages;
  if (time?.verdict === 'kept' && !(isGone && fits(length, form.within)))
    findings.push({ stage: 'time', verdict: 'kept', piece: null, words: 'it was not gone in time' });
  if (time?.verdict === 'broken' && fits(length, form.within))
    findings.push({ stage: 'time', verdict: 'broken', piece: null, words: 'the time was not over' });
  if (time?.deadline != null && Math.abs(minuteOf(time.deadline) - removed - form.within.minutes) > tiny)
    findings.push({ stage: 'time', verdict: time.verdict, piece: null, words: 'another deadline' });

  const starts = form.starts.filter(({ only }) => only === undefined || only === truth.starts_as);
  const looks = lastLooks({ ...scene, until: Math.min(scene.until, isGone ? gone : scene.until) }, removed);
  const isStarted =
    looks.length > 0 && looks.every((look) => starts.some((one) => couldMeet(look, one, error)));
  const isNot = looks.some((look) => look.length > 0 && starts.every((one) => couldFail(look, one, error)));
  if (stages.start?.verdict === 'kept' && !isStarted)
    findings.push({ stage: 'start', verdict: 'kept', piece: null, words: 'neither cold nor hot enough' });
  if (stages.start?.verdict === 'broken' && !isNot)
    findings.push({
      stage: 'start',
      verdict: 'broken',
      piece: null,
      words: 'each piece was cold or hot enough',
    });

  const conditional = starts.find(({ stays }) => stays !== undefined)?.stays ?? null;
  const figure = form.stays ?? conditional;
  if (figure === null) return findings;
  const free = starts.filter(({ stays }) => stays === undefined);
  const isFree = looks.length > 0 && looks.every((look) => free.some((one) => couldMeet(look, one, error)));
  if (stages.warmth?.verdict === 'not_applicable' && (form.stays !== null || !isFree))
    findings.push({
      stage: 'warmth',
      verdict: 'not_applicable',
      piece: null,
      words: 'its start asks for it',
    });
  return [...findings, ...warmthClaims(scene, stages, figure)];
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
