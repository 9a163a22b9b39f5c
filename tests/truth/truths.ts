import type { StageName } from '#lib/judge/answer.ts';
import type { RuleKind } from '#lib/judge/record.ts';
import { inDegF } from './claim.ts';
import { chartOf } from './claim-heat.ts';
import { holdOf } from './claim-hold.ts';
import { minuteOf } from './clock.ts';
import { anyPlace, everyPlace, type Food, first, last } from './food.ts';
import { type History, knownFrom } from './history.ts';

export type Truth = 'kept' | 'broken' | null; // null = neither, as yet

/** The worst of several. */
export const worst = (truths: readonly Truth[]): Truth => {
  if (truths.includes('broken')) return 'broken';
  return truths.includes(null) ? null : 'kept';
};

export type Bounds = { start: number; until: number; ended: boolean };

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
  const { come_up: up } = history.profile.figures;
  const truths: Truths = {};
  if (asked !== null && asked.standS === null) truths.temperature = charted(asked.chart, bounds);
  if (up !== null)
    truths.come_up = (food) => {
      const left = first(anyPlace(food, 'above', inDegF(up.from, 'degF'), knownFrom, bounds.until));
      const reached = stays(food, inDegF(up.to, 'degF'), 0, bounds);
      return timed(reached - left, up.within.minutes, bounds.until - left);
    };
  return truths;
}

type Chart = NonNullable<History['profile']['figures']['roast_chart']>;

/** Some row of the chart was met. */
const charted = ({ rows }: Chart, bounds: Bounds) => {
  const isMet = (food: Food) => rows.some((row) => stays(food, row.degF, row.held_s, bounds) < bounds.until);
  return (food: Food): Truth => (isMet(food) ? 'kept' : bounds.ended ? 'broken' : null);
};

/** How warm cold food got while it was out. */
function outs({ profile, truth }: History, { start, until }: Bounds): Truths {
  const stays = profile.figures.time_control?.six_hours?.stays ?? null;
  if (truth.mode !== '6h' || stays === null) return {};
  const level = inDegF(stays, 'degF');
  return {
    warmth: (food) => (anyPlace(food, 'above', level, start, until).length > 0 ? 'broken' : 'kept'),
  };
}

/** The cooling between the two heats, and the last cook. */
function parts(history: History, { until, ended }: Bounds): Truths {
  const { truth, profile, record } = history;
  const [heatTo, finalFrom] = [truth.heat_to, truth.final_from];
  if (typeof heatTo !== 'number' || typeof finalFrom !== 'number') return {};
  const [from, to] = [minuteOf(heatTo), Math.min(minuteOf(finalFrom), until)];
  const truths: Truths = {};
  if (to > from)
    truths.cooling = (food) =>
      worst(
        profile.figures.cooling.map((stage, place) => {
          const start = profile.figures.cooling[place - 1]?.to;
          const figure = stage.counted === 'from_previous' && start !== undefined ? start : stage.from;
          if (figure === null) return null;
          const hot = last(anyPlace(food, 'above', inDegF(figure, 'degF'), from, to));
          const left = Math.max(hot, from);
          const reached = first(everyPlace(food, 'below', inDegF(stage.to, 'degF'), left, to));
          return timed(reached - left, stage.within.minutes, to - left);
        }),
      );
  const { cook, roast_chart: roast } = profile.figures;
  const chart = (record.food.class === 'intact_roast' ? roast : null) ?? cook[record.food.class];
  if (chart !== undefined && until > minuteOf(finalFrom))
    truths.final_cook = charted(chart, { start: minuteOf(finalFrom), until, ended });
  return truths;
}

const makers: Record<RuleKind, (history: History, bounds: Bounds) => Truths> = {
  hot_hold: holding,
  cold_hold: holding,
  cooling: coolings,
  reheat: reheats,
  cook: cooks,
  time_control: outs,
  noncontinuous: parts,
};

/** What was so of each stage, by food, within the bounds of the step. */
export const truthsOf = (history: History, bounds: Bounds): Truths => makers[history.kind](history, bounds);
