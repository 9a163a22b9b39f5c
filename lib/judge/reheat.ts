import { conventions } from '#lib/limits/conventions.ts';
import type { Profile, ReheatRoute } from '#lib/limits/profile.ts';
import type { Reason, Stage, Stages, Verdict } from './answer.ts';
import type { Bracketing } from './brackets.ts';
import { type Care, care } from './care.ts';
import type { Judged } from './combine.ts';
import { high, isClose, type Line, line, low } from './compare.ts';
import {
  atMoment,
  byPiece,
  firstAtOrAfter,
  naturalHeated,
  type PieceLooks,
  type Span,
  span,
  suspects,
  unreadPiece,
} from './evidence.ts';
import { warmingTime } from './heat-time.ts';
import { belowAt, belowAtTheEnd, earlierOf, type Heated, heated, reachedAt } from './heated.ts';
import type { JudgedReading, StepRecord } from './record.ts';
import { byRoastChart } from './roast.ts';
import { blankStage, notApplicable, sorted } from './stage.ts';

/** What the route of this reheat demands. */
type Way = {
  route: ReheatRoute;
  target: Line;
  care: Care;
};

type Followed = {
  record: StepRecord;
  piece: PieceLooks;
  seen: Span;
  shown: Heated;
  reachedAt: number | null; // r_hi
};

/** The route's demands. No route said, or one that the food's class does not allow, is the conventional one. */
function wayOf(record: StepRecord, { figures }: Profile): Way | null {
  const { route } = record.facts;
  const chosen =
    route === 'microwave'
      ? figures.reheat_microwave
      : route === 'commercial'
        ? figures.reheat_commercial
        : figures.reheat_conventional;
  if (chosen === null) return null;
  return { route: chosen, target: line(chosen.target), care: care(record, chosen.stand_s) };
}

function follow(record: StepRecord, piece: PieceLooks, seen: Span, { route, target }: Way): Followed {
  const shown = heated(record, piece.looks, {
    degF: target.degF,
    degC: target.degC,
    heldS: route.held_s,
    gapMin: conventions.run_gap_min,
  });
  return { record, piece, seen, shown, reachedAt: earlierOf(shown.notedAt, shown.foundAgainAt) };
}

const isUnnatural = (record: StepRecord, rests: readonly number[]): boolean =>
  rests.length > 0 && !rests.some((index) => naturalHeated(record.readings[index]?.spot ?? null));

const isNear =
  (record: StepRecord, near: Line, value: (reading: JudgedReading) => number) => (index: number) => {
    const reading = record.readings[index];
    return reading !== undefined && isClose(near, value(reading), reading.unit, reading.accuracy);
  };

/** Whether any look found the piece close to the target: a plain loop, for it goes over every look. */
function someNear({ readings }: StepRecord, looks: readonly number[], near: Line): boolean {
  for (const index of looks) {
    const reading = readings[index];
    if (reading !== undefined && isClose(near, low(reading), reading.unit, reading.accuracy)) return true;
  }
  return false;
}

function temperatureVerdict(
  followed: Followed,
  way: Way,
): { verdict: Verdict; rests: number[]; reasons: Reason[] } {
  const { record, piece, shown, seen } = followed;
  if (way.care === 'missed') return { verdict: 'broken', rests: [], reasons: [] };
  const missedAt = shown.firstAt === null ? belowAtTheEnd(shown, seen.end) : null;
  if (missedAt !== null)
    return { verdict: 'broken', rests: belowAt(record, piece.looks, missedAt, way.target), reasons: [] };
  const at = followed.reachedAt;
  if (at !== null && way.care !== 'unknown')
    return { verdict: 'kept', rests: reachedAt(record, piece.looks, at, way.target), reasons: [] };
  const reasons: Reason[] = [];
  if (at === null) reasons.push(shown.unnoted ? 'hold_time_not_noted' : 'not_reached');
  if (way.care === 'unknown') reasons.push('microwave_care_unknown');
  return { verdict: 'not_shown', rests: [], reasons };
}

/** Each piece read was at or above the target at a look, and stayed there for the seconds demanded. */
function temperature(followed: Followed, way: Way, shared: readonly Reason[], by: number | null): Stage {
  const { record, piece, seen } = followed;
  const { verdict, rests, reasons } = temperatureVerdict(followed, way);
  const all: Reason[] = [...shared, ...reasons];
  if (someNear(record, piece.looks, way.target)) all.push('close_to_limit');
  if (isUnnatural(record, rests)) all.push('spot_not_natural');
  const open = seen.end === null && verdict === 'not_shown';
  const action = reasons.includes('hold_time_not_noted') ? 'note_seconds' : 'reach_target';
  return {
    ...blankStage(way.route.target.section),
    verdict,
    open,
    limit: way.target.limit,
    reasons: sorted(all),
    next: verdict === 'broken' ? { action: 'stop_and_tag', by: null } : open ? { action, by } : null,
    rests_on: rests,
  };
}

/** The last of the first `until` looks for which `does` holds. */
function lastOf(
  looks: readonly number[],
  until: number,
  does: (index: number) => boolean,
): number | undefined {
  for (let place = until - 1; place >= 0; place--) {
    const index = looks[place];
    if (index !== undefined && does(index)) return index;
  }
  return undefined;
}

type Clock = { sLo: number | null; sHi: number | null; sLoReadings: number[]; sHiReadings: number[] };

/**
 * When the food left the cold. A core reading taken during heating does not show that the outside is still cold,
 * so within the step only the warmest, the thin end or the surface can move the start; before it, and at its
 * start, any spot but the coldest can show it.
 */
function clock({ record, piece, seen }: Followed, from: Line): Clock {
  const { readings } = record;
  const start = seen.start ?? Number.NEGATIVE_INFINITY;
  const isWarm = (index: number): boolean => {
    const reading = readings[index];
    return reading !== undefined && high(reading) >= from[reading.unit];
  };
  const at = (index: number): number => readings[index]?.at ?? 0;
  const firstWarm = piece.looks.find(isWarm);
  const sHi = firstWarm === undefined ? null : at(firstWarm);
  // From the first warm reading on no look can move the start; those of its own moment are not before it.
  const cold = sHi === null ? piece.looks.length : firstAtOrAfter(record, piece.looks, sHi);
  const shows = (index: number): boolean => {
    const reading = readings[index];
    if (reading === undefined || reading.suspect) return false;
    if (reading.at <= start) return reading.spot !== 'coldest';
    return reading.spot === 'warmest' || reading.spot === 'edge' || reading.spot === 'surface';
  };
  // A moment with a warm reading shows nothing; those before the step are of one moment.
  const before = piece.before.some(isWarm) ? [] : piece.before.filter(shows);
  const last = lastOf(piece.looks, cold, shows) ?? before.at(-1);
  const sLo = last === undefined ? null : at(last);
  return {
    sLo,
    sHi,
    sLoReadings: [...before, ...atMoment(record, piece.looks, sLo)].filter(
      (index) => at(index) === sLo && shows(index),
    ),
    sHiReadings: atMoment(record, piece.looks, sHi).filter(isWarm),
  };
}

/** At the target no more than the limit after a moment when the place read was still cold. */
function time(followed: Followed, way: Way, profile: Profile, shared: readonly Reason[]): Stage {
  const { reheat_from: fromFigure, reheat_within: within } = profile.figures;
  if (fromFigure === null || within === null) return notApplicable(way.route.target.section, 'no_figure');
  const { record, piece, shown, seen } = followed;
  const from = line(fromFigure);
  const { sLo, sHi, sLoReadings, sHiReadings } = clock(followed, from);
  const brackets = { sLo, sHi, mLo: shown.lastBelowAt, mHi: followed.reachedAt };
  const below = belowAt(record, piece.looks, shown.lastBelowAt, way.target);
  const reached = reachedAt(record, piece.looks, followed.reachedAt, way.target);
  const reasons: Reason[] = [...shared];
  const atStart = [...sLoReadings, ...sHiReadings];
  const atTarget = [...below, ...reached];
  if (atStart.some(isNear(record, from, high)) || atTarget.some(isNear(record, way.target, low)))
    reasons.push('close_to_limit');
  const goesOn = seen.end === null;
  return warmingTime({ record, goesOn, target: way.target, within, brackets, reached, below }, reasons);
}

function pieceStages(followed: Followed, way: Way, profile: Profile): Stages {
  const suspect = suspects(followed.piece);
  const shared: Reason[] = suspect === null ? [] : [suspect];
  const timed = time(followed, way, profile, shared);
  return { temperature: temperature(followed, way, shared, timed.open ? timed.deadline : null), time: timed };
}

/** No food was read in the step: nothing is shown, but what was read before it still sets the deadline. */
function nothingRead(
  record: StepRecord,
  pieces: readonly PieceLooks[],
  seen: Span,
  way: Way,
  profile: Profile,
): Stages[] {
  const judged = pieces.length > 0 ? pieces : [unreadPiece(null)];
  return judged.map((piece) => pieceStages(follow(record, piece, seen, way), way, profile));
}

function unread(
  record: StepRecord,
  groups: readonly PieceLooks[],
  seen: Span,
  way: Way,
  profile: Profile,
  reason: Reason,
): Judged {
  const say = (stage: Stage): Stage =>
    stage.verdict === 'not_applicable' ? stage : { ...stage, verdict: 'not_shown', reasons: [reason] };
  const byPiece = nothingRead(record, groups, seen, way, profile).map((stages, place) => ({
    piece: groups[place]?.piece ?? null,
    stages: Object.fromEntries(Object.entries(stages).map(([name, stage]) => [name, say(stage)])),
  }));
  return { byPiece, whole: {}, read: [] };
}

/**
 * Reheating for hot holding, FDA Food Code 2022 3-403.11(A) to (E) by docs/judge.md 4.3. Seconds are demanded by
 * (A) only; the two hours of (D) name (A) to (C) only.
 */
export function reheat(record: StepRecord, profile: Profile): Judged {
  const { figures } = profile;
  const { route } = record.facts;
  const none = (section: string): Stage => notApplicable(section, 'no_figure');
  if (route === 'immediate') {
    const section = figures.reheat_immediate?.section ?? '';
    return { byPiece: [], whole: { temperature: none(section), time: none(section) }, read: [] };
  }
  // The route of (E) is for a roast; a food of any other class is judged by the stricter conventional one.
  if (route === 'roast' && record.food.class === 'intact_roast' && figures.reheat_roast !== null) {
    const { section } = figures.reheat_roast;
    const judged = byRoastChart(record, profile, section);
    return { ...judged, whole: { ...judged.whole, time: none(section) } };
  }
  const way = wayOf(record, profile);
  if (way === null) return { byPiece: [], whole: { temperature: none(''), time: none('') }, read: [] };
  const seen = span(record);
  const { pieces, airRead } = byPiece(record, seen);
  const read = pieces.filter((piece) => piece.looks.length > 0);
  if (read.length === 0)
    return unread(record, pieces, seen, way, profile, airRead ? 'air_only' : 'no_reading');
  return {
    byPiece: read.map((piece) => ({
      piece: piece.piece,
      stages: pieceStages(follow(record, piece, seen, way), way, profile),
    })),
    whole: {},
    read: read.map((piece) => piece.piece),
  };
}

/** What each piece's readings bracket in the stage `time`: the search that the verdict itself rests on, for its proof. */
export function reheatBrackets(record: StepRecord, profile: Profile): Bracketing[] {
  const way = wayOf(record, profile);
  const { reheat_from: fromFigure } = profile.figures;
  if (way === null || fromFigure === null) return [];
  const seen = span(record);
  return byPiece(record, seen).pieces.map((piece) => {
    const followed = follow(record, piece, seen, way);
    const { sLo, sHi, sLoReadings, sHiReadings } = clock(followed, line(fromFigure));
    const { lastBelowAt: mLo } = followed.shown;
    const mHi = followed.reachedAt;
    return {
      piece: piece.piece,
      brackets: { sLo, sHi, mLo, mHi },
      serving: {
        sLo: sLoReadings,
        sHi: sHiReadings,
        mLo: belowAt(record, piece.looks, mLo, way.target),
        mHi: reachedAt(record, piece.looks, mHi, way.target),
      },
    };
  });
}
