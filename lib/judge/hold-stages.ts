import { conventions } from '#lib/limits/conventions.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Reason, Stage, Stages } from './answer.ts';
import { type Below, below } from './below.ts';
import type { Judged } from './combine.ts';
import type { Span } from './evidence.ts';
import type { HeldTo } from './held-to.ts';
import { type Held, type HoldPass, proofsOf } from './hold-pass.ts';
import type { StepRecord } from './record.ts';
import { blankStage, notApplicable, sorted } from './stage.ts';

const loggerGapMs = conventions.logger_gap_min * 60_000;

function reasonsOf(held: Held): Reason[] {
  const reasons: Reason[] = [];
  if (held.suspect) reasons.push(held.sound ? 'suspect_reading' : 'suspect_only');
  if (held.disputed) reasons.push('allowance_not_shown');
  if (held.close) reasons.push('close_to_limit');
  return reasons;
}

function verdictOf(held: Held): Stage['verdict'] {
  if (held.bad) return 'broken';
  return !held.proven || held.disputed ? 'not_shown' : 'kept';
}

function atReadings(held: Held, seen: Span, to: HeldTo, below: Below | undefined): Stage {
  const verdict = verdictOf(held);
  const goesOn = seen.end === null;
  const reasons = reasonsOf(held);
  const unproven = verdict !== 'broken' && !held.proven;
  if (unproven && held.sound) reasons.push(to.side.onlyReason);
  if (verdict === 'broken' ? below?.unnatural === true : verdict === 'kept' && held.unnatural)
    reasons.push('spot_not_natural');
  const stage = blankStage(to.section);
  stage.verdict = verdict;
  stage.open = goesOn && verdict !== 'broken';
  stage.limit = to.limit.limit;
  stage.reasons = sorted(reasons);
  if (verdict === 'not_shown' && goesOn) stage.next = { action: 'read_food', by: null };
  if (below === undefined) return stage;
  stage.rests_on = below.bad;
  stage.next = { action: 'stop_and_tag', by: null };
  stage.first_bad = held.firstBad;
  const [longest, shortest] = [below.longest / 60_000, below.shortest / 60_000];
  if (to.side.isHot) {
    stage.below_longest_min = longest;
    stage.below_shortest_min = shortest;
  } else {
    stage.above_longest_min = longest;
    stage.above_shortest_min = shortest;
  }
  return stage;
}

/** About witness, not about the rule: did a logger see it all the time? */
function betweenReadings(held: Held, seen: Span, to: HeldTo, below: Below | undefined): Stage {
  const gap = Math.max(held.loggerGap, seen.until - held.lastLogged);
  const isCovered = held.logged && gap <= loggerGapMs && !held.loggedBelow;
  const broken = held.bad;
  const reasons = reasonsOf(held);
  if (broken && below?.unnatural === true) reasons.push('spot_not_natural');
  const stage = blankStage(to.section);
  stage.verdict = broken ? 'broken' : isCovered ? 'kept' : 'not_shown';
  stage.open = seen.end === null && !broken && gap <= loggerGapMs;
  stage.limit = to.limit.limit;
  stage.reasons = sorted(reasons);
  if (below !== undefined) stage.rests_on = below.bad;
  stage.longest_gap_min = Math.max(held.longestGap, seen.until - held.lastProof) / 60_000;
  return stage;
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
 * Pieces that were all kept by readings of sound thermometers are judged as one that has the worst of each: the
 * same stages come of it, for the price of one. Null: they differ, and each is judged alone.
 */
function asOne(pieces: readonly Held[]): Held[] | null {
  const [first] = pieces;
  if (first === undefined || pieces.length < 2) return null;
  const one: Held = { ...first };
  for (const held of pieces) {
    if (held.suspect || verdictOf(held) !== 'kept') return null;
    one.close ||= held.close;
    one.unnatural ||= held.unnatural;
    one.logged &&= held.logged;
    one.longestGap = Math.max(one.longestGap, held.longestGap);
    one.lastProof = Math.min(one.lastProof, held.lastProof);
    one.loggerGap = Math.max(one.loggerGap, held.loggerGap);
    one.lastLogged = Math.min(one.lastLogged, held.lastLogged);
  }
  return [one];
}

/**
 * What a pass over a hold shows of the figure it is held to: `at_readings` and `between_readings`, piece by piece.
 * The same for hot and for cold holding, and for the warmest that cold food may get while it is kept by time.
 */
export function heldAtReadings(
  record: StepRecord,
  to: HeldTo,
  pass: HoldPass,
  asked: 'step' | 'pieces',
): Judged {
  const { seen, pieces, airRead, looked } = pass;
  if (pieces.length === 0) return { byPiece: [], whole: nothingRead(seen, to, airRead), read: [] };
  const broken = pieces.filter((held) => held.bad).map((held) => held.piece);
  const lengths = broken.length === 0 ? null : below(record, seen, to, broken);
  const judged = asked === 'step' ? (asOne(pieces) ?? pieces) : pieces;
  return {
    byPiece: judged.map((held) => ({
      piece: held.piece,
      stages: {
        at_readings: atReadings(held, seen, to, lengths?.get(held.piece)),
        between_readings: betweenReadings(held, seen, to, lengths?.get(held.piece)),
      },
    })),
    whole: {},
    read: pieces.map((held) => held.piece),
    proofs: proofsOf(record, seen, looked, to.side),
  };
}

/** The profile publishes no figure for this hold: only what is asked beside it is judged. */
export function withoutFigure(whole: Stages): Judged {
  const none = notApplicable('', 'no_figure');
  return { byPiece: [], whole: { at_readings: none, between_readings: none, ...whole }, read: [] };
}
