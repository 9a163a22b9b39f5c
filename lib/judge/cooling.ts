import type { CoolingStage, Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Action, Reason, Stage, StageName, Stages } from './answer.ts';
import { type Bracketing, type Brackets, bracketed } from './brackets.ts';
import type { Judged } from './combine.ts';
import { high, isClose, type Line, line, low } from './compare.ts';
import {
  atMoment,
  byPiece,
  naturalCooled,
  type PieceLooks,
  provesCooled,
  type Span,
  span,
  suspects,
  suspectsBefore,
  unreadPiece,
} from './evidence.ts';
import { hasJump } from './jump.ts';
import type { JudgedReading, StepRecord } from './record.ts';
import { blankStage, notApplicable, sorted } from './stage.ts';
import { isUntimed } from './untimed.ts';

/** From where a stage counts: a figure that the food leaves, or the moment at which it was made. */
type FigureStart = {
  kind: 'figure';
  line: Line;
  isUpper: boolean; // a figure to come below: the higher of typed and corrected counts
};
type Start = FigureStart | { kind: 'made'; at: number | null };

const valueFor = ({ isUpper }: FigureStart): ((reading: JudgedReading) => number) => (isUpper ? high : low);

/** A stage of the rule made ready: from where, to which line, and the figure at which the whole cooling starts. */
type Way = { stage: CoolingStage; start: Start; to: Line; wholeStart: Line | null };

/** One piece's readings in order of time, the last before the step among them. */
type Followed = {
  record: StepRecord;
  looks: readonly number[];
  disputed: ReadonlySet<number>;
  leftHeatAt?: number | undefined; // ms: it was surely not cooling before
  lefts: Map<Start, Left>; // what was found of each start: stages that count from one share it
};

type Found = {
  brackets: Brackets;
  roseAgain: boolean;
  anyBelowStart: boolean; // some food reading, of any spot, below the start figure
};

const proves = (reading: JudgedReading): boolean => !reading.suspect && provesCooled(reading.spot);

/*
 * Instants are searched as extremes: +Infinity is a first that has not come, -Infinity a last that never was. A
 * line's two numbers are taken out before each loop, for these loops are what a night of looks costs.
 */
const orNull = (at: number): number | null => (Number.isFinite(at) ? at : null);

/** sLo and sHi from the figure that the food leaves; a contested look before the step is taken for neither. */
function leaving(followed: Followed, { line: { degF, degC }, isUpper }: FigureStart) {
  const { record, looks, disputed } = followed;
  const { readings } = record;
  let sHi = Number.POSITIVE_INFINITY;
  let sLo = Number.NEGATIVE_INFINITY;
  let sLoEarlier = Number.NEGATIVE_INFINITY; // the last one at an earlier moment than sLo
  let anyBelow = false;
  let isBack = false; // at the figure again after it had surely left it
  for (let place = 0; place < looks.length; place++) {
    const index = looks[place] ?? 0;
    const reading = readings[index];
    if (reading === undefined) continue;
    const { at } = reading;
    const value = reading.correction === null ? reading.value : isUpper ? high(reading) : low(reading);
    if (value < (reading.unit === 'degF' ? degF : degC)) {
      anyBelow = true;
      if (at < sHi && proves(reading) && !(disputed.size > 0 && disputed.has(index))) sHi = at;
    } else if (at > sHi) isBack = true;
    else if (at < sHi && !reading.suspect) {
      if (sLo < at) sLoEarlier = sLo;
      sLo = at;
    }
  }
  // None of one moment's readings is before the other: a start figure seen when the food had left it is no start.
  if (sLo === sHi) sLo = sLoEarlier;
  return { sHi: orNull(sHi), sLo: disputed.size > 0 ? null : orNull(sLo), anyBelow, isBack };
}

type Left = ReturnType<typeof leaving>;

/** What the record says of a start; a moment at which it was made is known as it is. */
function leftOf(followed: Followed, start: Start): Left {
  if (start.kind === 'made') return { sHi: start.at, sLo: start.at, anyBelow: true, isBack: false };
  const known = followed.lefts.get(start);
  if (known !== undefined) return known;
  const left = notBefore(leaving(followed, start), followed.leftHeatAt);
  followed.lefts.set(start, left);
  return left;
}

/** The end of a heating stands for the last look at the start figure where no later look was there (docs/judge.md 4.8). */
const notBefore = (left: Left, at: number | undefined): Left =>
  at !== undefined && at > (left.sLo ?? Number.NEGATIVE_INFINITY) && at <= (left.sHi ?? at)
    ? { ...left, sLo: at }
    : left;

/** mLo and mHi at the figure to reach: the last look above it, and the first proof after it. */
function reaching(followed: Followed, { degF, degC }: Line, sHi: number) {
  const { readings } = followed.record;
  let mLo = Number.NEGATIVE_INFINITY;
  let mHi = Number.POSITIVE_INFINITY;
  let firstReached = Number.POSITIVE_INFINITY;
  let roseAgain = false;
  for (const index of followed.looks) {
    const reading = readings[index];
    if (reading === undefined) continue;
    const { at } = reading;
    const value = reading.correction === null ? reading.value : high(reading);
    if (value >= (reading.unit === 'degF' ? degF : degC)) {
      mLo = at;
      mHi = Number.POSITIVE_INFINITY;
      if (at > firstReached) roseAgain = true;
    } else if (at < mHi && proves(reading)) {
      if (at < firstReached) firstReached = at;
      if (at > mLo && at >= sHi) mHi = at;
    }
  }
  return { mLo: orNull(mLo), mHi: orNull(mHi), roseAgain };
}

/** Whether some food reading after `sHi` is at or above the figure at which the cooling starts. */
function backAtStart(followed: Followed, { degF, degC }: Line, sHi: number): boolean {
  const { readings } = followed.record;
  for (let place = followed.looks.length - 1; place >= 0; place--) {
    const reading = readings[followed.looks[place] ?? -1];
    if (reading === undefined) continue;
    if (reading.at <= sHi) return false; // in order of time: none before it is after sHi
    const value = reading.correction === null ? reading.value : low(reading);
    if (value >= (reading.unit === 'degF' ? degF : degC)) return true;
  }
  return false;
}

function found(followed: Followed, way: Way): Found {
  const { start, wholeStart } = way;
  const left = leftOf(followed, start);
  const { mLo, mHi, roseAgain } = reaching(followed, way.to, left.sHi ?? Number.POSITIVE_INFINITY);
  const isWhole = start.kind === 'figure' && start.line === wholeStart && !start.isUpper;
  const isBack = isWhole
    ? left.isBack
    : wholeStart !== null && left.sHi !== null && backAtStart(followed, wholeStart, left.sHi);
  return {
    brackets: { sLo: left.sLo, sHi: left.sHi, mLo, mHi },
    roseAgain: roseAgain || isBack,
    anyBelowStart: left.anyBelow,
  };
}

/** The readings that serve as one end of a bracket: those of that moment which lie on its side. */
const serving = (
  { record, looks }: Followed,
  at: number | null,
  does: (reading: JudgedReading) => boolean,
): number[] =>
  atMoment(record, looks, at).filter((index) => {
    const reading = record.readings[index];
    return reading !== undefined && does(reading);
  });

type Ends = { sLo: number[]; sHi: number[]; mLo: number[]; mHi: number[] };

function endsOf(followed: Followed, way: Way, { sLo, sHi, mLo, mHi }: Brackets): Ends {
  const { start, to } = way;
  const isAbove = (reading: JudgedReading): boolean => high(reading) >= to[reading.unit];
  const hasLeft = (reading: JudgedReading): boolean =>
    start.kind === 'figure' && valueFor(start)(reading) < start.line[reading.unit];
  const made = start.kind === 'made';
  return {
    sLo: made ? [] : serving(followed, sLo, (reading) => !reading.suspect && !hasLeft(reading)),
    sHi: made ? [] : serving(followed, sHi, (reading) => proves(reading) && hasLeft(reading)),
    mLo: serving(followed, mLo, isAbove),
    mHi: serving(followed, mHi, (reading) => proves(reading) && !isAbove(reading)),
  };
}

function isCloseAtAnEnd({ record }: Followed, way: Way, ends: Ends): boolean {
  const near = (to: Line, value: (reading: JudgedReading) => number) => (index: number) => {
    const reading = record.readings[index];
    return reading !== undefined && isClose(to, value(reading), reading.unit, reading.accuracy);
  };
  const { start } = way;
  const isAtStart =
    start.kind === 'figure' && [...ends.sLo, ...ends.sHi].some(near(start.line, valueFor(start)));
  return isAtStart || [...ends.mLo, ...ends.mHi].some(near(way.to, high));
}

/** Of several readings that serve at one moment a natural one is enough. */
const isUnnatural = (record: StepRecord, serving: readonly number[]): boolean =>
  serving.length > 0 && !serving.some((index) => naturalCooled(record.readings[index]?.spot ?? null));

/** The next figure to reach. The words take it from the stage's limit, so another profile's 20 °C is said as such. */
const actionOf = (way: Way): Action => (way.stage.name === 'stage_1' ? 'reach_70' : 'reach_41');

function isStageOpen(
  { record: { asOf }, disputed }: Followed,
  way: Way,
  { brackets, anyBelowStart }: Found,
  deadline: number | null,
): boolean {
  // A contested start is never known, whatever is read later: such a stage can no longer be kept.
  if (brackets.mHi !== null || disputed.size > 0) return false;
  if (way.start.kind === 'made') return deadline !== null && asOf <= deadline;
  // The clock of a later stage starts with the end of the one before, which a later look can still show.
  if (way.stage.counted === 'from_previous' && brackets.sHi === null) return true;
  return (brackets.sLo !== null && deadline !== null && asOf <= deadline) || !anyBelowStart;
}

type Context = { seen: Span; ways: Way[]; shared: readonly Reason[] };

function stageOf(followed: Followed, way: Way, { seen, shared }: Context): Stage {
  const { asOf } = followed.record;
  const { within } = way.stage;
  const what = found(followed, way);
  const result = bracketed(what.brackets, within.minutes, within.comparison === 'less_than');
  const waits = way.stage.counted === 'from_previous' && what.brackets.sHi === null;
  const deadline = waits ? null : result.deadline;
  const open = seen.end === null && result.verdict !== 'broken' && isStageOpen(followed, way, what, deadline);
  const ends = endsOf(followed, way, what.brackets);
  const reasons: Reason[] = [...shared, ...result.reasons];
  if (what.roseAgain) reasons.push('rose_again');
  if (isCloseAtAnEnd(followed, way, ends)) reasons.push('close_to_limit');
  const rests = {
    kept: [ends.sLo, ends.mHi],
    broken: [ends.sHi, ends.mLo],
    not_shown: [],
    not_applicable: [],
  };
  const restsOn = rests[result.verdict];
  if (restsOn.some((serving) => isUnnatural(followed.record, serving))) reasons.push('spot_not_natural');
  return {
    ...blankStage(within.section),
    verdict: result.verdict,
    open,
    limit: way.to.limit,
    limit_min: within.minutes,
    longest_min: result.longest_min,
    shortest_min: result.shortest_min,
    deadline,
    remaining_min: deadline === null ? null : minutesBetween(asOf, deadline),
    reasons: sorted(reasons),
    next: nextOf(result.verdict, open, { action: actionOf(way), by: deadline }),
    rests_on: restsOn.flat().sort((a, b) => a - b),
  };
}

function nextOf(
  verdict: Stage['verdict'],
  open: boolean,
  reach: { action: Action; by: number | null },
): Stage['next'] {
  if (verdict === 'broken') return { action: 'stop_and_tag', by: null };
  return open ? reach : null;
}

/** When it was made is not known: nobody can say how long it took. */
function startUnknown(way: Way, shared: readonly Reason[]): Stage {
  const { within } = way.stage;
  return {
    ...blankStage(within.section),
    limit: way.to.limit,
    limit_min: within.minutes,
    shortest_min: 0,
    reasons: sorted([...shared, 'start_unknown']),
  };
}

const startAt = (from: Line | null): Start =>
  from === null ? { kind: 'made', at: null } : { kind: 'figure', line: from, isUpper: false };

/** The rule's stages for this food. A list without figures is empty. */
function waysOf(record: StepRecord, { figures }: Profile): Way[] {
  const ambient = figures.cooling_ambient;
  if (record.facts.ingredients === 'ambient' && ambient !== null) {
    const start: Start = { kind: 'made', at: record.facts.prepared_at ?? null };
    return [{ stage: ambient, start, to: line(ambient.to), wholeStart: null }];
  }
  const first = figures.cooling[0]?.from ?? null;
  const wholeStart = first === null ? null : line(first);
  const whole = startAt(wholeStart);
  return figures.cooling.map((stage, place) => {
    const to = line(stage.to);
    const previous = figures.cooling[place - 1];
    if (stage.counted === 'from_previous' && previous !== undefined)
      return { stage, start: { kind: 'figure', line: line(previous.to), isUpper: true }, to, wholeStart };
    const from = stage.from === null ? wholeStart : line(stage.from);
    return { stage, start: from === wholeStart ? whole : startAt(from), to, wholeStart };
  });
}

/**
 * Looks before the step at a roast that may be held at 130 °F: to the letter its two hours ran during the hold.
 * Contested, so none of them starts the clock, and no later look makes the start known.
 */
function contested(record: StepRecord, { figures }: Profile, before: readonly number[]): Set<number> {
  const { hot_hold_roast: roast, cooling } = figures;
  const from = cooling[0]?.from ?? null;
  const may = record.facts.roast_cook === 'kept' || record.facts.roast_cook === 'not_shown';
  if (roast === null || from === null || record.food.class !== 'intact_roast' || !may) return new Set();
  const [lower, upper] = [line(roast), line(from)];
  const isContested = before.some((index) => {
    const reading = record.readings[index];
    if (reading === undefined) return false;
    const value = low(reading);
    return value >= lower[reading.unit] && value < upper[reading.unit];
  });
  // Such a piece is broken only by readings of the step, so nothing before it starts the clock.
  return new Set(isContested ? before : []);
}

/** What was read of this food: of one made from ambient ingredients nothing before it was made. */
function followedOf(record: StepRecord, profile: Profile, piece: PieceLooks): Followed {
  const { ingredients, prepared_at: preparedAt } = record.facts;
  const all = piece.before.length === 0 ? piece.looks : piece.before.concat(piece.looks);
  if (ingredients !== 'ambient' || profile.figures.cooling_ambient === null)
    return { record, looks: all, disputed: contested(record, profile, piece.before), lefts: new Map() };
  const madeAt = preparedAt ?? null;
  const looks = madeAt === null ? all : all.filter((index) => (record.readings[index]?.at ?? 0) >= madeAt);
  return { record, looks, disputed: new Set(), lefts: new Map() };
}

function pieceStages(
  followed: Followed,
  piece: PieceLooks,
  context: Context,
  more: readonly Reason[],
): Stages {
  const { record, looks } = followed;
  const suspect = piece.looks.length > 0 ? suspects(piece) : suspectsBefore(record, piece);
  const shared: Reason[] = [...more];
  if (suspect !== null) shared.push(suspect);
  if (followed.disputed.size > 0) shared.push('disputed');
  if (hasJump(record.readings, looks)) shared.push('implausible_jump');
  const stages: Stages = {};
  for (const way of context.ways) {
    const name: StageName = way.stage.name;
    const unknown = way.start.kind === 'made' && way.start.at === null;
    stages[name] = unknown ? startUnknown(way, shared) : stageOf(followed, way, { ...context, shared });
  }
  return stages;
}

/** Nothing was read, in the step or before it: only what facts say of the clock is known. */
function nothingRead(record: StepRecord, context: Context, reason: Reason, leftHeatAt?: number): Stages {
  const followed: Followed = { record, looks: [], disputed: new Set(), leftHeatAt, lefts: new Map() };
  const stages = pieceStages(followed, unreadPiece(null), context, []);
  return Object.fromEntries(
    Object.entries(stages).map(([name, stage]) => [name, { ...stage, reasons: [reason] }]),
  );
}

/** Cooled by a method without a clock: no figure speaks of how long it takes. */
function withoutClock(ways: readonly Way[], section: string): Judged {
  const none = notApplicable(section, 'no_figure');
  const names: StageName[] = ways.map(({ stage }) => stage.name);
  return { byPiece: [], whole: Object.fromEntries(names.map((name) => [name, none])), read: [] };
}

/** The pieces that were read in the step, without what was read of them before it. */
const readIn = (pieces: readonly PieceLooks[]): PieceLooks[] =>
  pieces.filter(({ looks }) => looks.length > 0).map((piece) => ({ ...piece, before: [] }));

/**
 * Cooling, FDA Food Code 2022 3-501.14(A) and (B) by docs/judge.md 4.2. Kept says: the food was at or below the
 * figure at a moment no more than the limit after a moment when a place of it was still at or above the start
 * figure, and no later look of this cooling was above it.
 * @param leftHeatAt ms: the end of a first heating, from which the record of this cooling is taken (4.8)
 */
export function cooling(record: StepRecord, profile: Profile, leftHeatAt?: number): Judged {
  const seen = span(record);
  const ways = waysOf(record, profile);
  const { cooling_untimed: untimed } = profile.figures;
  if (untimed !== null && isUntimed(record, untimed)) return withoutClock(ways, untimed.asked.section);
  if (ways.length === 0) return { byPiece: [], whole: { total: notApplicable('', 'no_figure') }, read: [] };
  const context: Context = { seen, ways, shared: [] };
  const { pieces: all, airRead } = byPiece(record, seen);
  const pieces = leftHeatAt === undefined ? all : readIn(all);
  const read = pieces.filter((piece) => piece.looks.length > 0);
  const unread: Reason = airRead ? 'air_only' : 'no_reading';
  if (pieces.length === 0)
    return { byPiece: [], whole: nothingRead(record, context, unread, leftHeatAt), read: [] };
  const judged = read.length > 0 ? read : pieces;
  return {
    byPiece: judged.map((piece) => ({
      piece: piece.piece,
      stages: pieceStages(
        { ...followedOf(record, profile, piece), leftHeatAt },
        piece,
        context,
        read.length > 0 ? [] : [unread],
      ),
    })),
    whole: {},
    read: read.map((piece) => piece.piece),
  };
}

/** What each judged piece's readings bracket in one stage: the search that the verdict itself rests on, for its proof. */
export function coolingBrackets(record: StepRecord, profile: Profile, name: StageName): Bracketing[] {
  const way = waysOf(record, profile).find(({ stage }) => stage.name === name);
  if (way === undefined || (way.start.kind === 'made' && way.start.at === null)) return [];
  return byPiece(record, span(record)).pieces.map((piece) => {
    const followed = followedOf(record, profile, piece);
    const { brackets } = found(followed, way);
    return { piece: piece.piece, brackets, serving: endsOf(followed, way, brackets) };
  });
}
