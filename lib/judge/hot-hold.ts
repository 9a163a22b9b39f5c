import { conventions } from '#lib/limits/conventions.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Reason, Stage, Stages } from './answer.ts';
import { type Below, below } from './below.ts';
import type { Judged } from './combine.ts';
import { isClose, low } from './compare.ts';
import { naturalHot, type Span, span } from './evidence.ts';
import { type HeldTo, heldTo } from './held-to.ts';
import { housePlan } from './house-plan.ts';
import type { JudgedReading, StepRecord } from './record.ts';
import { blankStage, notApplicable, sorted } from './stage.ts';

/** What one pass over a piece's readings leaves. Instants in ms; -1 = none yet. */
type Held = {
  piece: number | null;
  food: number;
  suspect: number;
  bad: number;
  firstBad: number;
  close: boolean;
  disputed: boolean;
  lastProof: number;
  longestGap: number; // ms without a proving reading
  proofs: number[]; // indices of the proving readings
  lastNatural: number;
  waiting: number; // the first look of an unnatural spot that waits for a natural one
  unnatural: boolean; // one waited in vain
  lastLogged: number; // a logger's last reading of the coldest place or the thin end
  logged: boolean;
  loggerGap: number;
  loggedBelow: boolean;
};

const nothingHeld = (piece: number | null, start: number): Held => ({
  piece,
  food: 0,
  suspect: 0,
  bad: 0,
  firstBad: -1,
  close: false,
  disputed: false,
  lastProof: start,
  longestGap: 0,
  proofs: [],
  lastNatural: -1,
  waiting: -1,
  unnatural: false,
  lastLogged: start,
  logged: false,
  loggerGap: 0,
  loggedBelow: false,
});

const lookMs = conventions.look_min * 60_000;
const loggerGapMs = conventions.logger_gap_min * 60_000;

/** A proving reading of an unnatural spot is enough where a natural one of the piece lies within a look of it. */
function noteSpot(held: Held, reading: JudgedReading): void {
  const { at } = reading;
  if (naturalHot(reading.spot)) {
    if (held.waiting >= 0) {
      if (at - held.waiting > lookMs) held.unnatural = true;
      held.waiting = -1;
    }
    held.lastNatural = at;
  } else if (held.waiting < 0 && (held.lastNatural < 0 || at - held.lastNatural > lookMs)) held.waiting = at;
}

function noteLogger(held: Held, at: number, isBelow: boolean): void {
  held.logged = true;
  if (at - held.lastLogged > held.loggerGap) held.loggerGap = at - held.lastLogged;
  held.lastLogged = at;
  if (isBelow) held.loggedBelow = true;
}

/** One pass over the step's readings: what each piece was seen to do, and when this food was looked at at all. */
function pass(record: StepRecord, seen: Span, to: HeldTo): { pieces: Held[]; airRead: boolean } {
  const { readings } = record;
  const { order, stop } = seen;
  const { limit, disputedFrom } = to;
  const start = seen.start ?? 0;
  const groups = new Map<number | null, Held>();
  let airRead = false;
  let held = nothingHeld(-1, start);
  for (let place = seen.first; place < stop; place++) {
    const index = order === null ? place : (order[place] ?? 0);
    const reading = readings[index];
    if (reading === undefined) continue;
    const { spot, unit, at } = reading;
    if (spot === 'air') {
      airRead = true;
      continue;
    }
    if (held.piece !== reading.piece) {
      const known = groups.get(reading.piece);
      held = known ?? nothingHeld(reading.piece, start);
      if (known === undefined) groups.set(reading.piece, held);
    }
    held.food++;
    const value = low(reading);
    const isBelow = value < limit[unit];
    if (isBelow) {
      if (disputedFrom !== null && value >= disputedFrom[unit]) held.disputed = true;
      else if (held.bad++ === 0) held.firstBad = at;
    }
    if (!held.close && isClose(limit, value, unit, reading.accuracy)) held.close = true;
    if (reading.suspect) held.suspect++;
    else if (spot !== 'warmest') {
      if (at - held.lastProof > held.longestGap) held.longestGap = at - held.lastProof;
      held.lastProof = at;
      held.proofs.push(index);
      noteSpot(held, reading);
      if (reading.source === 'logger' && naturalHot(spot)) noteLogger(held, at, isBelow);
    }
  }
  return { pieces: [...groups.values()], airRead };
}

function reasonsOf(held: Held): Reason[] {
  const reasons: Reason[] = [];
  if (held.suspect > 0) reasons.push(held.suspect === held.food ? 'suspect_only' : 'suspect_reading');
  if (held.disputed) reasons.push('allowance_not_shown');
  if (held.close) reasons.push('close_to_limit');
  return reasons;
}

function verdictOf(held: Held): Stage['verdict'] {
  if (held.bad > 0) return 'broken';
  return held.proofs.length === 0 || held.disputed ? 'not_shown' : 'kept';
}

function atReadings(held: Held, seen: Span, to: HeldTo, below: Below | undefined): Stage {
  const verdict = verdictOf(held);
  const reasons = reasonsOf(held);
  const unproven = verdict !== 'broken' && held.proofs.length === 0;
  if (unproven && held.suspect < held.food) reasons.push('warmest_only');
  if (
    verdict === 'broken'
      ? below?.unnatural === true
      : verdict === 'kept' && (held.unnatural || held.waiting >= 0)
  )
    reasons.push('spot_not_natural');
  const stage: Stage = {
    ...blankStage(to.section),
    verdict,
    open: seen.end === null && verdict !== 'broken',
    limit: to.limit.limit,
    reasons: sorted(reasons),
    rests_on: verdict === 'broken' ? (below?.bad ?? []) : held.proofs,
  };
  if (verdict === 'not_shown' && seen.end === null) stage.next = { action: 'read_food', by: null };
  if (below === undefined) return stage;
  stage.next = { action: 'stop_and_tag', by: null };
  stage.first_bad = held.firstBad;
  stage.below_longest_min = below.longest / 60_000;
  stage.below_shortest_min = below.shortest / 60_000;
  return stage;
}

/** About witness, not about the rule: did a logger see it all the time? */
function betweenReadings(held: Held, seen: Span, to: HeldTo, below: Below | undefined): Stage {
  const gap = Math.max(held.loggerGap, seen.until - held.lastLogged);
  const isCovered = held.logged && gap <= loggerGapMs && !held.loggedBelow;
  const broken = held.bad > 0;
  const reasons = reasonsOf(held);
  if (broken && below?.unnatural === true) reasons.push('spot_not_natural');
  return {
    ...blankStage(to.section),
    verdict: broken ? 'broken' : isCovered ? 'kept' : 'not_shown',
    open: seen.end === null && !broken && gap <= loggerGapMs,
    limit: to.limit.limit,
    reasons: sorted(reasons),
    rests_on: broken ? (below?.bad ?? []) : isCovered ? held.proofs : [],
    longest_gap_min: Math.max(held.longestGap, seen.until - held.lastProof) / 60_000,
  };
}

function nothingRead(seen: Span, to: HeldTo, airRead: boolean): Stages {
  const reasons: Reason[] = [airRead ? 'air_only' : 'no_reading'];
  const goesOn = seen.end === null;
  const gap = seen.start === null ? null : minutesBetween(seen.start, seen.until);
  const stage: Stage = { ...blankStage(to.section), limit: to.limit.limit, reasons, open: goesOn };
  return {
    at_readings: { ...stage, next: goesOn ? { action: 'read_food', by: null } : null },
    between_readings: {
      ...stage,
      open: goesOn && (gap === null || gap <= conventions.logger_gap_min),
      longest_gap_min: gap,
    },
  };
}

/**
 * Hot holding, FDA Food Code 2022 3-501.16(A)(1) by docs/judge.md 4.1; also for rest, service and transport. Kept
 * says: at each moment when this food was read the place read was at or above the limit. Between two looks it
 * says nothing; `between_readings` speaks of a logger, `house_plan_interval` of the kitchen's own plan.
 */
export function hotHold(record: StepRecord, profile: Profile): Judged {
  const seen = span(record);
  const plan = housePlan(record, seen);
  const whole: Stages = plan === null ? {} : { house_plan_interval: plan };
  const to = heldTo(record, profile);
  if (to === null) {
    const none = notApplicable('', 'no_figure');
    return { byPiece: [], whole: { at_readings: none, between_readings: none, ...whole }, read: [] };
  }
  const { pieces, airRead } = pass(record, seen, to);
  if (pieces.length === 0)
    return { byPiece: [], whole: { ...nothingRead(seen, to, airRead), ...whole }, read: [] };
  const broken = pieces.filter((held) => held.bad > 0).map((held) => held.piece);
  const lengths = broken.length === 0 ? null : below(record, seen, to, broken);
  return {
    byPiece: pieces.map((held) => ({
      piece: held.piece,
      stages: {
        at_readings: atReadings(held, seen, to, lengths?.get(held.piece)),
        between_readings: betweenReadings(held, seen, to, lengths?.get(held.piece)),
      },
    })),
    whole,
    read: pieces.map((held) => held.piece),
  };
}
