import type { OvenFigure } from '#lib/limits/figure.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Stage, Stages, Verdict } from './answer.ts';
import { byChart } from './chart.ts';
import type { Judged } from './combine.ts';
import { endSeen } from './evidence.ts';
import type { StepRecord } from './record.ts';
import { blankStage } from './stage.ts';

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
export function ovenStage(record: StepRecord, figure: OvenFigure, section: string): Stage {
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
  return { ...stage, open: endSeen(record) === null };
}

/**
 * The chart of 3-401.11(B) and its oven line (docs/judge.md 4.4), for a roast that is cooked and, under its own
 * section, for one that is reheated by 3-403.11(E). A value between two rows earns the lower row.
 */
export function byRoastChart(record: StepRecord, profile: Profile, section?: string): Judged {
  const { roast_chart: chart, roast_oven: oven } = profile.figures;
  if (chart === null) return { byPiece: [], whole: {}, read: [] };
  const judged = byChart(record, { chart, section: section ?? chart.section, care: null });
  if (oven === null) return judged;
  const line = ovenStage(record, oven, section ?? oven.section);
  return { ...judged, whole: { ...judged.whole, oven: line }, byFacts: ['oven'] };
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
