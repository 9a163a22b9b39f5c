import type { StageName, Stages } from '#lib/judge/answer.ts';
import { inDegF } from './claim.ts';
import { chartOf } from './claim-heat.ts';
import { holdOf } from './claim-hold.ts';
import { minuteOf } from './clock.ts';
import { anyPlace, everyPlace, type Food, first, last } from './food.ts';
import { type History, type Interval, intervals, knownFrom } from './history.ts';

/**
 * How much of what was so can be shown. The truth here is of the whole food, read or not, at every moment: so a judge
 * that says nothing has a share of 0, and one look in four hours a small one.
 */
export type Share = { kept: number; keptShown: number; broken: number; brokenShown: number };
export type Shares = Record<string, Share>; // by "kind.stage.interval"

type Truth = 'kept' | 'broken' | null; // null = neither, as yet

const worst = (truths: readonly Truth[]): Truth => {
  if (truths.includes('broken')) return 'broken';
  return truths.includes(null) ? null : 'kept';
};

type Bounds = { start: number; until: number; ended: boolean };

/** The first minute from which every place stays at or above a level for so many seconds. */
function stays(food: Food, level: number, heldS: number, { start, until }: Bounds): number {
  const times = everyPlace(food, 'above', level, start, until);
  for (let place = 0; place < times.length; place += 2) {
    const [a, b] = [times[place] ?? 0, times[place + 1] ?? 0];
    if (b - a >= heldS / 60) return a;
  }
  return Number.POSITIVE_INFINITY;
}

const timed = (length: number, limit: number, passed: number): Truth =>
  length <= limit ? 'kept' : passed >= limit ? 'broken' : null;

type Truths = Partial<Record<StageName, (food: Food) => Truth>>;

function holding(history: History, bounds: Bounds): Truths {
  const hold = holdOf(history);
  if (hold === null) return {};
  const level = inDegF(hold.keeps, 'degF');
  const wrong = history.kind === 'cold_hold' ? 'above' : 'below';
  return {
    at_readings: (food) =>
      anyPlace(food, wrong, level, bounds.start, bounds.until).length > 0 ? 'broken' : 'kept',
  };
}

function coolings({ profile, record }: History, { until }: Bounds): Truths {
  const { cooling, cooling_ambient: ambient } = profile.figures;
  const truths: Truths = {};
  const made =
    record.facts.ingredients === 'ambient' && ambient !== null ? record.facts.prepared_at : undefined;
  if (made === null) return truths;
  const stages = made !== undefined && ambient !== null ? [ambient] : cooling;
  stages.forEach((stage, place) => {
    const previous = stage.counted === 'from_previous' ? stages[place - 1]?.to : undefined;
    const from = previous ?? stage.from ?? cooling[0]?.from ?? null;
    truths[stage.name] = (food) => {
      const left =
        made !== undefined
          ? minuteOf(made)
          : from === null
            ? Number.NEGATIVE_INFINITY
            : last(anyPlace(food, 'above', inDegF(from, 'degF'), knownFrom, until));
      if (left === Number.NEGATIVE_INFINITY) return null;
      const reached = first(everyPlace(food, 'below', inDegF(stage.to, 'degF'), left, until));
      return timed(reached - left, stage.within.minutes, until - left);
    };
  });
  return truths;
}

function reheats({ profile, record }: History, bounds: Bounds): Truths {
  const { figures } = profile;
  const { route } = record.facts;
  const way = route === 'commercial' ? figures.reheat_commercial : figures.reheat_conventional;
  const { reheat_from: from, reheat_within: within } = figures;
  if (way === null || route === 'microwave') return {};
  const reached = (food: Food): number => stays(food, inDegF(way.target, 'degF'), way.held_s, bounds);
  const temperature = (food: Food): Truth =>
    reached(food) < bounds.until ? 'kept' : bounds.ended ? 'broken' : null;
  if (from === null || within === null) return { temperature };
  return {
    temperature,
    time: (food) => {
      const left = first(anyPlace(food, 'above', inDegF(from, 'degF'), knownFrom, bounds.until));
      return timed(reached(food) - left, within.minutes, bounds.until - left);
    },
  };
}

function cooks(history: History, bounds: Bounds): Truths {
  const asked = chartOf(history);
  if (asked === null || asked.standS !== null) return {};
  const { chart } = asked;
  const isMet = (food: Food) =>
    chart.rows.some((row) => stays(food, row.degF, row.held_s, bounds) < bounds.until);
  return { temperature: (food) => (isMet(food) ? 'kept' : bounds.ended ? 'broken' : null) };
}

const truthsOf = { hot_hold: holding, cold_hold: holding, cooling: coolings, reheat: reheats, cook: cooks };

/** Counts what was so of this step, and what the judge could show of it. Exact thermometers only. */
export function count(shares: Shares, history: History, stages: Stages): void {
  const { kind, record, interval } = history;
  if (history.error > 0 || !(kind in truthsOf)) return;
  const ended = record.end !== null && record.end <= record.asOf;
  const until = minuteOf(ended && record.end !== null ? record.end : record.asOf);
  const bounds: Bounds = { start: 0, until, ended };
  const truths = truthsOf[kind as keyof typeof truthsOf](history, bounds);
  for (const [name, truthOf] of Object.entries(truths)) {
    const stage = stages[name as StageName];
    if (stage === undefined || stage.verdict === 'not_applicable') continue;
    const truth = worst([...history.groups.values()].map(truthOf));
    if (truth === null) continue;
    const key = `${kind}.${name}.${interval}`;
    shares[key] ??= { kept: 0, keptShown: 0, broken: 0, brokenShown: 0 };
    shares[key][truth]++;
    if (stage.verdict === truth) shares[key][truth === 'kept' ? 'keptShown' : 'brokenShown']++;
  }
}

export function addShares(to: Shares, more: Shares): void {
  for (const [key, one] of Object.entries(more)) {
    const sum = to[key] ?? { kept: 0, keptShown: 0, broken: 0, brokenShown: 0 };
    for (const part of ['kept', 'keptShown', 'broken', 'brokenShown'] as const) sum[part] += one[part];
    to[key] = sum;
  }
}

export const shareOf = (
  shares: Shares,
  rule: string,
  interval: Interval,
  verdict: 'kept' | 'broken',
): number => {
  const one = shares[`${rule}.${interval}`];
  if (one === undefined) return Number.NaN;
  return verdict === 'kept' ? one.keptShown / one.kept : one.brokenShown / one.broken;
};

/** "kind.stage", each once. */
export const rulesIn = (shares: Shares): string[] =>
  [...new Set(Object.keys(shares).map((key) => key.slice(0, key.lastIndexOf('.'))))].sort();

/** One line a rule: of what was kept (and of what was broken) so much is shown when one looks so often. */
export function shareLines(shares: Shares): string[] {
  const percent = (value: number): string => (Number.isNaN(value) ? '–' : `${(100 * value).toFixed(1)} %`);
  const line = (name: string, cells: string[]): string =>
    `${name.padEnd(32)}${cells.map((cell) => cell.padStart(10)).join('')}`;
  const table = (verdict: 'kept' | 'broken'): string[] => [
    line(
      `shown, of what was ${verdict}`,
      intervals.map((every) => `${every} min`),
    ),
    ...rulesIn(shares).map((rule) =>
      line(
        `  ${rule}`,
        intervals.map((every) => percent(shareOf(shares, rule, every, verdict))),
      ),
    ),
  ];
  return [...table('kept'), ...table('broken')];
}
