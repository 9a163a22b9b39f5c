import { conventions } from '#lib/limits/conventions.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Reason, Stage, Verdict } from './answer.ts';
import type { Care } from './care.ts';
import type { Judged } from './combine.ts';
import {
  byPiece,
  firstAtOrAfter,
  naturalHeated,
  type PieceLooks,
  type Span,
  span,
  suspects,
} from './evidence.ts';
import { belowAt, belowAtTheEnd, type Heated, heated, reachedAt, type Target } from './heated.ts';
import type { StepRecord } from './record.ts';
import { blankStage, sorted } from './stage.ts';

/**
 * The rows of a cooking chart (docs/judge.md 4.4): any row met is enough, and a value between two rows earns the
 * lower one. The same for the chart of whole roasts, for the rows of a class and for food cooked in a microwave.
 */
export type Chart = NonNullable<Profile['figures']['roast_chart']>;

type Row = Chart['rows'][number];

/** What is asked of the food: a chart, the section that says so, and a microwave's care where one is asked. */
export type Asked = { chart: Chart; section: string; care: Care };

/** The look at which a row of the chart was met; by looks alone, `heatOn` is assumed. */
type Met = { at: number; row: Row; heatOn: boolean };

const lowestRow = (chart: Chart): Row =>
  chart.rows.reduce((lowest, row) => (row.degF < lowest.degF ? row : lowest));

const targetOf = (row: Row): Target => ({
  degF: row.degF,
  degC: row.degC,
  heldS: row.held_s,
  gapMin: conventions.heat_on_gap_min,
});

const sooner = (met: Met | null, at: number | null, row: Row, heatOn: boolean): Met | null =>
  at !== null && (met === null || at < met.at) ? { at, row, heatOn } : met;

/**
 * The first row that was met: by noted seconds, or else by looks no more than 30 minutes apart with the heat on. Looks
 * at a higher row are looks at the lowest, so those before its first, and the rows of more seconds than were ever
 * noted at it, need not be gone through.
 */
function met(record: StepRecord, looks: readonly number[], chart: Chart, lowest: Heated): Met | null {
  if (lowest.firstAt === null) return null;
  const hot = looks.slice(firstAtOrAfter(record, looks, lowest.firstAt));
  let byNote: Met | null = null;
  for (const row of chart.rows) {
    if (row.held_s > lowest.mostHeld) continue;
    byNote = sooner(byNote, heated(record, hot, targetOf(row)).notedAt, row, false);
  }
  if (byNote !== null) return byNote;
  let byRun: Met | null = null;
  for (const row of chart.rows)
    byRun = sooner(byRun, heated(record, hot, targetOf(row)).foundAgainAt, row, true);
  return byRun;
}

/** By which row the looks at one piece meet a chart, and when; null = by none. `heatOn`: by looks alone. */
export const rowMet = (record: StepRecord, looks: readonly number[], chart: Chart): Met | null =>
  met(record, looks, chart, heated(record, looks, targetOf(lowestRow(chart))));

type Shown = { verdict: Verdict; reasons: Reason[]; rests: number[] };

/** What the looks at one piece show of the chart; a part of a microwave's care that was missed breaks the cook. */
function shownOf(record: StepRecord, looks: readonly number[], { chart, care }: Asked, seen: Span): Shown {
  if (care === 'missed') return { verdict: 'broken', reasons: [], rests: [] };
  const lowest = lowestRow(chart);
  const shown = heated(record, looks, targetOf(lowest));
  const done = met(record, looks, chart, shown);
  const missedAt = done === null && shown.firstAt === null ? belowAtTheEnd(shown, seen.end) : null;
  if (missedAt !== null)
    return { verdict: 'broken', reasons: [], rests: belowAt(record, looks, missedAt, lowest) };
  const reasons: Reason[] = [];
  if (done === null) reasons.push(shown.unnoted ? 'hold_time_not_noted' : 'not_reached');
  else if (done.heatOn) reasons.push('heat_on');
  if (care === 'unknown') reasons.push('microwave_care_unknown');
  if (done === null || care === 'unknown') return { verdict: 'not_shown', reasons, rests: [] };
  return { verdict: 'kept', reasons, rests: reachedAt(record, looks, done.at, done.row) };
}

function blankTemperature({ chart, section }: Asked): Stage {
  const limit = {
    value: lowestRow(chart)[chart.first],
    unit: chart.first,
    comparison: 'at_or_above',
  } as const;
  return { ...blankStage(section), limit };
}

function nextOf(verdict: Verdict, open: boolean, reasons: readonly Reason[]): Stage['next'] {
  if (verdict === 'broken') return { action: 'stop_and_tag', by: null };
  if (!open) return null;
  return { action: reasons.includes('hold_time_not_noted') ? 'note_seconds' : 'reach_target', by: null };
}

function pieceTemperature(record: StepRecord, piece: PieceLooks, asked: Asked, seen: Span): Stage {
  const { looks } = piece;
  const { verdict, reasons, rests } = shownOf(record, looks, asked, seen);
  const suspect = suspects(piece);
  if (suspect !== null) reasons.push(suspect);
  if (rests.length > 0 && !rests.some((index) => naturalHeated(record.readings[index]?.spot ?? null)))
    reasons.push('spot_not_natural');
  const open = seen.end === null && verdict === 'not_shown';
  return {
    ...blankTemperature(asked),
    verdict,
    open,
    reasons: sorted(reasons),
    next: nextOf(verdict, open, reasons),
    rests_on: rests,
  };
}

/** The stage **temperature** of a cook by its chart, piece by piece; with no food read it stays not shown. */
export function byChart(record: StepRecord, asked: Asked): Judged {
  const seen = span(record);
  const { pieces, airRead } = byPiece(record, seen);
  const read = pieces.filter((piece) => piece.looks.length > 0);
  const open = seen.end === null;
  const unread: Stage = {
    ...blankTemperature(asked),
    open,
    reasons: [airRead ? 'air_only' : 'no_reading'],
    next: open ? { action: 'read_food', by: null } : null,
  };
  return {
    byPiece: read.map((piece) => ({
      piece: piece.piece,
      stages: { temperature: pieceTemperature(record, piece, asked, seen) },
    })),
    whole: read.length === 0 ? { temperature: unread } : {},
    read: read.map((piece) => piece.piece),
  };
}
