import { conventions } from '#lib/limits/conventions.ts';
import type { OvenFigure } from '#lib/limits/figure.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Reason, Stage, Stages, Verdict } from './answer.ts';
import type { Judged } from './combine.ts';
import { byPiece, naturalHeated, type PieceLooks, type Span, span, suspects } from './evidence.ts';
import { belowAt, belowAtTheEnd, heated, reachedAt, type Target } from './heated.ts';
import type { StepRecord } from './record.ts';
import { blankStage, sorted } from './stage.ts';

type Chart = NonNullable<Profile['figures']['roast_chart']>;

type Row = Chart['rows'][number];

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

/** The first row that was met: by noted seconds, or else by looks no more than 30 minutes apart with the heat on. */
function met(record: StepRecord, looks: readonly number[], chart: Chart): Met | null {
  let byNote: Met | null = null;
  let byRun: Met | null = null;
  for (const row of chart.rows) {
    const shown = heated(record, looks, targetOf(row));
    byNote = sooner(byNote, shown.notedAt, row, false);
    byRun = sooner(byRun, shown.foundAgainAt, row, true);
  }
  return byNote ?? byRun;
}

function pieceTemperature(
  record: StepRecord,
  { looks }: PieceLooks,
  chart: Chart,
  seen: Span,
  section: string,
): Stage {
  const lowest = lowestRow(chart);
  const shown = heated(record, looks, targetOf(lowest));
  const done = met(record, looks, chart);
  const missedAt = done === null && shown.firstAt === null ? belowAtTheEnd(shown, seen.end) : null;
  const reasons: Reason[] = [];
  const suspect = suspects(record, looks);
  if (suspect !== null) reasons.push(suspect);
  if (done?.heatOn === true) reasons.push('heat_on');
  if (done === null && missedAt === null) reasons.push(shown.unnoted ? 'hold_time_not_noted' : 'not_reached');
  const rests =
    done === null ? belowAt(record, looks, missedAt, lowest) : reachedAt(record, looks, done.at, done.row);
  if (rests.length > 0 && !rests.some((index) => naturalHeated(record.readings[index]?.spot ?? null)))
    reasons.push('spot_not_natural');
  const verdict: Verdict = done !== null ? 'kept' : missedAt !== null ? 'broken' : 'not_shown';
  const open = seen.end === null && verdict === 'not_shown';
  return {
    ...blankStage(section),
    verdict,
    open,
    limit: { value: lowest[chart.first], unit: chart.first, comparison: 'at_or_above' },
    reasons: sorted(reasons),
    next: open ? { action: 'reach_target', by: null } : null,
    rests_on: rests,
  };
}

type OvenLine = { value: number; comparison: 'at_or_above' | 'at_or_below' };

/** The table's line for this oven and weight; null where the weight would decide and is not known. */
function ovenLine(record: StepRecord, figure: OvenFigure): OvenLine[] {
  const { oven, mass_lb: massLb } = record.facts;
  const named = oven === 'pit' ? 'still_dry' : oven;
  const row = figure.lines.find((line) => line.oven === named);
  if (row === undefined) return [];
  const light: OvenLine = { value: row.light_degF, comparison: row.comparison };
  const heavy: OvenLine = { value: row.heavy_degF, comparison: row.comparison };
  if (massLb === null || massLb === undefined) return [light, heavy];
  return [massLb >= figure.heavy_from_lb ? heavy : light];
}

const isMet = (line: OvenLine, temperature: number): boolean =>
  line.comparison === 'at_or_above' ? temperature >= line.value : temperature <= line.value;

/**
 * The oven line of the roast chart, by facts. A weight that nobody noted matters only where the two lines differ
 * in their answer. A pit below its line is contested, never broken: the rule does not say that a pit is an oven.
 */
export function ovenStage(record: StepRecord, figure: OvenFigure, seen: Span, section: string): Stage {
  const { oven, oven_temp: temperature } = record.facts;
  const lines = ovenLine(record, figure);
  const [first] = lines;
  const stage: Stage = {
    ...blankStage(section),
    limit: first === undefined ? null : { value: first.value, unit: 'degF', comparison: first.comparison },
  };
  const answers =
    temperature === null || temperature === undefined ? [] : lines.map((line) => isMet(line, temperature));
  if (answers.length > 0 && answers.every((answer) => answer)) return { ...stage, verdict: 'kept' };
  if (answers.length > 0 && answers.every((answer) => !answer))
    return oven === 'pit' ? { ...stage, reasons: ['disputed'] } : { ...stage, verdict: 'broken' };
  return { ...stage, open: seen.end === null };
}

/**
 * The chart of 3-401.11(B) and its oven line (docs/judge.md 4.4), for a roast that is cooked and, under its own
 * section, for one that is reheated by 3-403.11(E). A value between two rows earns the lower row.
 */
export function byRoastChart(record: StepRecord, profile: Profile, section?: string): Judged {
  const { roast_chart: chart, roast_oven: oven } = profile.figures;
  if (chart === null) return { byPiece: [], whole: {}, read: [] };
  const seen = span(record);
  const { pieces, airRead } = byPiece(record, seen);
  const read = pieces.filter((piece) => piece.looks.length > 0);
  const whole: Stages = oven === null ? {} : { oven: ovenStage(record, oven, seen, section ?? oven.section) };
  if (read.length === 0)
    whole.temperature = {
      ...blankStage(section ?? chart.section),
      open: seen.end === null,
      reasons: [airRead ? 'air_only' : 'no_reading'],
    };
  return {
    byPiece: read.map((piece) => ({
      piece: piece.piece,
      stages: { temperature: pieceTemperature(record, piece, chart, seen, section ?? chart.section) },
    })),
    whole,
    read: read.map((piece) => piece.piece),
  };
}

/**
 * May this roast be held at the lower figure? The worse of oven and temperature: broken, then not shown, then
 * kept. Null where the cook was not judged by the roast chart.
 */
export function roastCook({ oven, temperature }: Stages): Verdict | null {
  if (oven === undefined || temperature === undefined) return null;
  const verdicts = [oven.verdict, temperature.verdict];
  return (
    verdicts.find((verdict) => verdict === 'broken') ??
    verdicts.find((verdict) => verdict === 'not_shown') ??
    'kept'
  );
}
