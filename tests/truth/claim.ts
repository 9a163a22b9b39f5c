import type { Stage, StageName, Stages } from '#lib/judge/answer.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Figures } from '#lib/limits/profile.ts';
import { minuteOf } from './clock.ts';
import type { Food } from './food.ts';
import type { History, Taken } from './history.ts';

/** A verdict whose own sentence is not true of the food. */
export type Finding = { stage: StageName; verdict: Stage['verdict']; piece: number | null; words: string };

/** One piece's readings as the sentences speak of them, in order of time; written apart from the judge. */
export type Group = {
  piece: number | null;
  food: Food;
  before: readonly Taken[]; // the last food readings before the step, all of that moment
  looks: readonly Taken[]; // the food readings in the step
};

export type Scene = {
  history: History;
  error: number;
  start: number; // minutes
  until: number;
  ended: boolean;
  groups: readonly Group[]; // those read in the step; if none was, those read before it
  anyRead: boolean;
};

/** Floats: an exact reading of a curve may differ from it in the last digits. */
export const tiny = 1e-6;

const at = (one: Taken): number => one.reading.at;

/** From when to when, in ms; null = not known, or it goes on. */
type Bounds = { start: number | null; end: number | null };

/** What the record lets be seen at its own moment, of the whole step or of a part of it. Null: nothing can be said. */
export function sceneOf(history: History, { start, end }: Bounds = history.record): Scene | null {
  const { record, taken } = history;
  const ended = end !== null && end <= record.asOf;
  const until = ended && end !== null ? end : record.asOf;
  const seen = taken.filter((one) => at(one) <= until).sort((a, b) => at(a) - at(b));
  const startAt = start ?? seen[0]?.reading.at;
  if (startAt === undefined) return null;
  const groups: Group[] = [];
  for (const [piece, food] of history.groups) {
    const own = seen.filter((one) => one.reading.piece === piece && one.where !== 'air');
    const earlier = own.filter((one) => at(one) < startAt);
    const lastBefore = earlier.at(-1)?.reading.at;
    groups.push({
      piece,
      food,
      before: earlier.filter((one) => at(one) === lastBefore),
      looks: own.filter((one) => at(one) >= startAt),
    });
  }
  const read = groups.filter(({ looks }) => looks.length > 0);
  return {
    history,
    error: history.error,
    start: minuteOf(startAt),
    until: minuteOf(until),
    ended,
    groups: read.length > 0 ? read : groups.filter(({ before }) => before.length > 0),
    anyRead: read.length > 0,
  };
}

/** A figure in °F as its unit prints it; a unit that is not printed is converted. */
export function inDegF({ value }: Pick<TemperatureFigure, 'value'>, unit: 'degF' | 'degC'): number {
  const fromC = value.degC === null ? null : value.degC * 1.8 + 32;
  return (unit === 'degF' ? (value.degF ?? fromC) : (fromC ?? value.degF)) ?? Number.NaN;
}

/** Readings in two units have two figures (57 °C is 134.6 °F): the one of them that asks least, or most. */
export function figureFor(
  readings: readonly Taken[],
  figure: Pick<TemperatureFigure, 'value'>,
  which: 'least' | 'most',
): number {
  const figures = [...new Set(readings.map(({ reading }) => reading.unit))].map((unit) =>
    inDegF(figure, unit),
  );
  if (figures.length === 0) figures.push(inDegF(figure, 'degF'), inDegF(figure, 'degC'));
  return which === 'least' ? Math.min(...figures) : Math.max(...figures);
}

const wantsHigh = ({ comparison }: TemperatureFigure): boolean =>
  comparison === 'at_or_above' || comparison === 'above';

/** Whether the place read kept the figure, or kept it once the figure is moved by the error in its favour. */
export const couldKeep = ({ degF, reading }: Taken, figure: TemperatureFigure, error: number): boolean =>
  wantsHigh(figure)
    ? degF >= inDegF(figure, reading.unit) - error - tiny
    : degF <= inDegF(figure, reading.unit) + error + tiny;

/** Whether it missed the figure, or missed it once the figure is moved by the error against it. */
export const couldMiss = ({ degF, reading }: Taken, figure: TemperatureFigure, error: number): boolean =>
  wantsHigh(figure)
    ? degF <= inDegF(figure, reading.unit) + error + tiny
    : degF >= inDegF(figure, reading.unit) - error - tiny;

export type TimeFigure = NonNullable<Figures['hot_hold_at_most']>;

/** Whether a length of time keeps a figure: exactly the figure does, unless less than it is asked. */
export const fits = (minutes: number, within: TimeFigure): boolean =>
  within.comparison === 'less_than' ? minutes < within.minutes - tiny : minutes <= within.minutes + tiny;

/** What a verdict claims of one thing that either was so or was not. */
export function claimedOf(name: StageName, stages: Stages, isSo: boolean, words: string): Finding[] {
  const verdict = stages[name]?.verdict;
  const isFalse = (verdict === 'kept' && !isSo) || (verdict === 'broken' && isSo);
  return isFalse ? [{ stage: name, verdict, piece: null, words }] : [];
}

/** Groups of one moment, in order of time. */
export function moments(looks: readonly Taken[]): Taken[][] {
  const all: Taken[][] = [];
  for (const look of looks) {
    const last = all.at(-1);
    if (last?.[0] !== undefined && at(last[0]) === at(look)) last.push(look);
    else all.push([look]);
  }
  return all;
}

/** From which minute the record of this piece speaks. */
export const firstMinute = (scene: Scene, group: Group): number => {
  const before = group.before[0];
  return before === undefined ? scene.start : Math.min(scene.start, minuteOf(before.reading.at));
};
