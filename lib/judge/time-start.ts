import type { Figures } from '#lib/limits/profile.ts';
import type { Reason, Stage } from './answer.ts';
import { line } from './compare.ts';
import { atMoment, type PieceLooks } from './evidence.ts';
import { coldSide, type HoldSide, hotSide, isBeyond } from './held-to.ts';
import type { Facts, JudgedReading, StepRecord } from './record.ts';
import { blankStage } from './stage.ts';

/** The four hours or the six, with the starts that each allows. */
export type TimeForm = NonNullable<NonNullable<Figures['time_control']>['four_hours']>;
export type TimeStart = TimeForm['starts'][number];

/** What the last looks before the food left control show of its start. */
export type Started = {
  stages: ReadonlyMap<number | null, Stage>; // by piece; empty where nothing was read
  whole: Stage | null; // then this
  read: (number | null)[]; // pieces with a look before it left
  /** Each piece began by a start that asks nothing of the time after it. */
  without: boolean;
};

/** The starts that this food may take: those for any food, and those for what it says it is. */
export const startsFor = (
  { starts }: TimeForm,
  startsAs: NonNullable<Facts['starts_as']> | null,
): TimeStart[] => starts.filter(({ only }) => only === undefined || only === startsAs);

/** A cold start proves where cold holding would, a hot one where hot holding would. */
const sideOf = ({ figure: { comparison } }: TimeStart): HoldSide =>
  comparison === 'at_or_above' || comparison === 'above' ? hotSide : coldSide;

const meets = (start: TimeStart, reading: JudgedReading): boolean => {
  const side = sideOf(start);
  return !isBeyond(side, line(start.figure), side.value(reading), reading.unit);
};

const proves = (start: TimeStart, { suspect, spot }: JudgedReading): boolean =>
  !suspect && spot !== 'air' && spot !== sideOf(start).onlyBreaks;

type Looked = { stage: Stage; by: TimeStart | null };

/**
 * All readings of one moment against the starts: one start that all of them meet and one of them proves keeps it;
 * where there is none that all of them meet, the food was neither cold nor hot enough.
 */
function judgedLook(record: StepRecord, look: readonly number[], starts: readonly TimeStart[]): Looked {
  const readings = look.flatMap((index) => record.readings[index] ?? []);
  const met = starts.filter((start) => readings.every((reading) => meets(start, reading)));
  const shownBy = met.filter((start) => readings.some((reading) => proves(start, reading)));
  // Of two starts that are both shown the one that asks nothing of the time after it counts.
  const by = shownBy.find(({ stays }) => stays === undefined) ?? shownBy[0] ?? null;
  const shown = by ?? met[0] ?? starts[0];
  const stage: Stage = {
    ...blankStage(shown?.figure.section ?? ''),
    limit: shown === undefined ? null : line(shown.figure).limit,
  };
  if (met.length === 0)
    return {
      by,
      stage: { ...stage, verdict: 'broken', next: { action: 'stop_and_tag', by: null }, rests_on: [...look] },
    };
  if (by === null) return { by, stage: { ...stage, reasons: unproven(readings, met) } };
  const rests = look.filter((index) => {
    const reading = record.readings[index];
    return reading !== undefined && proves(by, reading);
  });
  const reasons: Reason[] = readings.some(({ suspect }) => suspect) ? ['suspect_reading'] : [];
  return { by, stage: { ...stage, verdict: 'kept', reasons, rests_on: rests } };
}

/** Why a look that meets a start does not show it: a failed thermometer, or only the place that goes last. */
function unproven(readings: readonly JudgedReading[], met: readonly TimeStart[]): Reason[] {
  if (readings.every(({ suspect }) => suspect)) return ['suspect_only'];
  const reasons: Reason[] = readings.some(({ suspect }) => suspect) ? ['suspect_reading'] : [];
  const [first] = met;
  if (first !== undefined) reasons.unshift(sideOf(first).onlyReason);
  return reasons.sort();
}

/** Each piece's last food readings not later than `removedAt`; a piece that was read only later has none. */
export function startStage(
  record: StepRecord,
  pieces: readonly PieceLooks[],
  removedAt: number | null,
  starts: readonly TimeStart[],
  airRead: boolean,
): Started {
  const section = starts[0]?.figure.section ?? '';
  const limit = starts[0] === undefined ? null : line(starts[0].figure).limit;
  const unread = (reason: Reason): Stage => ({ ...blankStage(section), limit, reasons: [reason] });
  const nothing = { stages: new Map(), read: [], without: false };
  if (removedAt === null) return { ...nothing, whole: unread('start_unknown') };
  const stages = new Map<number | null, Stage>();
  const read: (number | null)[] = [];
  let without = true;
  for (const { piece, looks } of pieces) {
    const last = looks.findLast(
      (index) => (record.readings[index]?.at ?? Number.POSITIVE_INFINITY) <= removedAt,
    );
    const look = last === undefined ? [] : atMoment(record, looks, record.readings[last]?.at ?? null);
    if (look.length > 0) read.push(piece);
    const judged = look.length > 0 ? judgedLook(record, look, starts) : null;
    stages.set(piece, judged?.stage ?? unread('no_reading'));
    if (judged === null || judged.by === null || judged.by.stays !== undefined) without = false;
  }
  if (stages.size > 0) return { stages, whole: null, read, without };
  return { ...nothing, whole: unread(airRead ? 'air_only' : 'no_reading') };
}
