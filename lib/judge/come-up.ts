import { conventions } from '#lib/limits/conventions.ts';
import type { Figures } from '#lib/limits/profile.ts';
import type { Reason, Stage } from './answer.ts';
import type { Bracketing } from './brackets.ts';
import { high, line } from './compare.ts';
import { atMoment, byPiece, type PieceLooks, type Span, span, suspects, unreadPiece } from './evidence.ts';
import { warmingTime } from './heat-time.ts';
import { belowAt, heated, reachedAt } from './heated.ts';
import type { StepRecord } from './record.ts';

type ComeUp = NonNullable<Figures['come_up']>;

/**
 * Last reading at or below the figure before the first above it. The coldest place shows nothing of the rest, and a
 * suspect reading shows nothing; the last look before the step belongs to the record.
 */
function leaving(record: StepRecord, { before, looks }: PieceLooks, from: ReturnType<typeof line>) {
  let sHi: number | null = null;
  for (const index of looks) {
    const reading = record.readings[index];
    if (reading === undefined || high(reading) < from[reading.unit]) continue;
    sHi = reading.at;
    break;
  }
  let sLo: number | null = null;
  const isWarm = before.some((index) => {
    const reading = record.readings[index];
    return reading !== undefined && high(reading) >= from[reading.unit];
  });
  for (const index of isWarm ? looks : [...before, ...looks]) {
    const reading = record.readings[index];
    if (reading === undefined || (sHi !== null && reading.at >= sHi)) continue;
    if (!reading.suspect && reading.spot !== 'coldest') sLo = reading.at;
  }
  return { sLo, sHi };
}

function pieceComeUp(record: StepRecord, piece: PieceLooks, seen: Span, rule: ComeUp): Stage {
  const target = line(rule.to);
  const shown = heated(record, piece.looks, {
    degF: target.degF,
    degC: target.degC,
    heldS: 0,
    gapMin: conventions.run_gap_min,
  });
  const suspect = suspects(piece);
  const reasons: Reason[] = suspect === null ? [] : [suspect];
  const brackets = {
    ...leaving(record, piece, line(rule.from)),
    mLo: shown.lastBelowAt,
    mHi: shown.firstAt,
  };
  return warmingTime(
    {
      record,
      goesOn: seen.end === null,
      target,
      within: rule.within,
      brackets,
      reached: reachedAt(record, piece.looks, shown.firstAt, target),
      below: belowAt(record, piece.looks, shown.lastBelowAt, target),
    },
    reasons,
  );
}

/**
 * The come-up of a cook (docs/judge.md 4.4; FSIS Appendix A: 50 to 130 °F within 6 h), for each piece read in the
 * step; with none read, for each that was read before it, and for the batch where nothing was ever read.
 */
export function comeUp(record: StepRecord, rule: ComeUp): { piece: number | null; stage: Stage }[] {
  const seen = span(record);
  const { pieces, airRead } = byPiece(record, seen);
  const read = pieces.filter((piece) => piece.looks.length > 0);
  if (read.length > 0)
    return read.map((piece) => ({ piece: piece.piece, stage: pieceComeUp(record, piece, seen, rule) }));
  const judged = pieces.length > 0 ? pieces : [unreadPiece(null)];
  const unread: Reason = airRead ? 'air_only' : 'no_reading';
  return judged.map((piece) => ({
    piece: piece.piece,
    stage: { ...pieceComeUp(record, piece, seen, rule), reasons: [unread] },
  }));
}

/** What each piece's readings bracket: the search that the verdict itself rests on, for its proof. */
export function comeUpBrackets(record: StepRecord, rule: ComeUp): Bracketing[] {
  const [from, target] = [line(rule.from), line(rule.to)];
  return byPiece(record, span(record)).pieces.map((piece) => {
    const shown = heated(record, piece.looks, {
      degF: target.degF,
      degC: target.degC,
      heldS: 0,
      gapMin: conventions.run_gap_min,
    });
    const left = leaving(record, piece, from);
    const all = [...piece.before, ...piece.looks];
    const isWarm = (index: number): boolean => {
      const reading = record.readings[index];
      return reading !== undefined && high(reading) >= from[reading.unit];
    };
    return {
      piece: piece.piece,
      brackets: { ...left, mLo: shown.lastBelowAt, mHi: shown.firstAt },
      serving: {
        sLo: atMoment(record, all, left.sLo).filter((index) => !isWarm(index)),
        sHi: atMoment(record, piece.looks, left.sHi).filter(isWarm),
        mLo: belowAt(record, piece.looks, shown.lastBelowAt, target),
        mHi: reachedAt(record, piece.looks, shown.firstAt, target),
      },
    };
  });
}
