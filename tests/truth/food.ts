/**
 * A piece of food as physics has it: three places, °F over minutes. Surface and thin end follow the surroundings
 * (Newton), the thick part follows the thin end. The surroundings are constant over stretches, so every value has
 * a closed form, and within a stretch each place turns at most once.
 */
export const places = ['surface', 'edge', 'core'] as const;
export type Place = (typeof places)[number];

/** From this minute on the surroundings have this °F; `stirred`: the places were mixed at its start. */
export type Stretch = { from: number; around: number; stirred: boolean };

type Kind = { surface: number; edge: number; core: number }; // time constants, minutes

export type Food = {
  tau: Kind;
  from: number[];
  around: number[];
  /** Value of each place at the start of each stretch. */
  at: Record<Place, number[]>;
};

/** Shares of the places in the whole, for stirring. */
const share = { surface: 0.2, edge: 0.3, core: 0.5 };

const lead = (food: Food, stretch: number): number => {
  const { tau } = food;
  return (((food.at.edge[stretch] ?? 0) - (food.around[stretch] ?? 0)) * tau.edge) / (tau.edge - tau.core);
};

function inStretch(food: Food, place: Place, stretch: number, minute: number): number {
  const around = food.around[stretch] ?? 0;
  const passed = minute - (food.from[stretch] ?? 0);
  const start = food.at[place][stretch] ?? 0;
  if (place !== 'core') return around + (start - around) * Math.exp(-passed / food.tau[place]);
  const led = lead(food, stretch);
  return (
    around +
    led * Math.exp(-passed / food.tau.edge) +
    (start - around - led) * Math.exp(-passed / food.tau.core)
  );
}

export function foodIn(tau: Kind, surroundings: readonly Stretch[], first: Record<Place, number>): Food {
  const food: Food = { tau, from: [], around: [], at: { surface: [], edge: [], core: [] } };
  surroundings.forEach(({ from, around, stirred }, stretch) => {
    const now = { ...first };
    if (stretch > 0) for (const place of places) now[place] = inStretch(food, place, stretch - 1, from);
    if (stirred) {
      const mixed = share.surface * now.surface + share.edge * now.edge + share.core * now.core;
      for (const place of places) now[place] = mixed;
    }
    food.from.push(from);
    food.around.push(around);
    for (const place of places) food.at[place].push(now[place]);
  });
  return food;
}

function stretchAt(food: Food, minute: number): number {
  let from = 0;
  let to = food.from.length - 1;
  while (from < to) {
    const middle = (from + to + 1) >> 1;
    if ((food.from[middle] ?? 0) <= minute) from = middle;
    else to = middle - 1;
  }
  return from;
}

/** °F of one place at a minute. */
export const degF = (food: Food, place: Place, minute: number): number =>
  inStretch(food, place, stretchAt(food, minute), minute);

export type Somewhere = Place | 'coldest' | 'warmest';

/** °F of a place, or of the place that is coldest or warmest at that minute. */
export function degFAt(food: Food, where: Somewhere, minute: number): number {
  if (where !== 'coldest' && where !== 'warmest') return degF(food, where, minute);
  const stretch = stretchAt(food, minute);
  const surface = inStretch(food, 'surface', stretch, minute);
  const edge = inStretch(food, 'edge', stretch, minute);
  const core = inStretch(food, 'core', stretch, minute);
  return where === 'coldest' ? Math.min(surface, edge, core) : Math.max(surface, edge, core);
}

/** The minute within a stretch at which the thick part turns; NaN when it does not. */
function turn(food: Food, stretch: number): number {
  const led = lead(food, stretch);
  const own = (food.at.core[stretch] ?? 0) - (food.around[stretch] ?? 0) - led;
  const ratio = (-own * food.tau.edge) / (led * food.tau.core);
  if (!(ratio > 0)) return Number.NaN;
  return (food.from[stretch] ?? 0) + Math.log(ratio) / (1 / food.tau.core - 1 / food.tau.edge);
}

/** Stretches of time, [from, to, from, to …] in minutes, in order and apart from each other. */
export type Times = number[];

function addTime(times: Times, from: number, to: number): void {
  const last = times.length - 1;
  if (last > 0 && from <= (times[last] ?? 0) + 1e-9) times[last] = Math.max(times[last] ?? 0, to);
  else times.push(from, to);
}

function crossing(
  food: Food,
  place: Place,
  stretch: number,
  level: number,
  from: number,
  to: number,
): number {
  const rises = inStretch(food, place, stretch, to) > inStretch(food, place, stretch, from);
  let [low, high] = [from, to];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (inStretch(food, place, stretch, middle) >= level === rises) high = middle;
    else low = middle;
  }
  return high;
}

/** When a place was at or above a level (or, with `below`, at or below it) between two minutes. */
export function timesOf(
  food: Food,
  place: Place,
  side: 'above' | 'below',
  level: number,
  from: number,
  to: number,
): Times {
  const times: Times = [];
  const isIn = (value: number): boolean => (side === 'above' ? value >= level : value <= level);
  const part = (stretch: number, a: number, b: number): void => {
    const [inA, inB] = [isIn(inStretch(food, place, stretch, a)), isIn(inStretch(food, place, stretch, b))];
    if (inA && inB) addTime(times, a, b);
    else if (inA || inB) {
      const middle = crossing(food, place, stretch, level, a, b);
      if (inA) addTime(times, a, middle);
      else addTime(times, middle, b);
    }
  };
  for (let stretch = stretchAt(food, from); stretch < food.from.length; stretch++) {
    const a = Math.max(from, food.from[stretch] ?? 0);
    const b = Math.min(to, food.from[stretch + 1] ?? Number.POSITIVE_INFINITY);
    if (a > to) break;
    const turned = place === 'core' ? turn(food, stretch) : Number.NaN;
    if (turned > a && turned < b) {
      part(stretch, a, turned);
      part(stretch, turned, b);
    } else part(stretch, a, b);
  }
  return times;
}

/** When any of several was. */
export function either(...all: readonly Times[]): Times {
  const pairs: [number, number][] = [];
  for (const times of all)
    for (let place = 0; place < times.length; place += 2)
      pairs.push([times[place] ?? 0, times[place + 1] ?? 0]);
  pairs.sort((a, b) => a[0] - b[0]);
  const times: Times = [];
  for (const [from, to] of pairs) addTime(times, from, to);
  return times;
}

/** When some place was on that side of the level. */
export const anyPlace = (
  food: Food,
  side: 'above' | 'below',
  level: number,
  from: number,
  to: number,
): Times => either(...places.map((place) => timesOf(food, place, side, level, from, to)));

/** When every place was: the time between the stretches in which some place was on the other side. */
export function everyPlace(
  food: Food,
  side: 'above' | 'below',
  level: number,
  from: number,
  to: number,
): Times {
  const others = anyPlace(food, side === 'above' ? 'below' : 'above', level, from, to);
  const times: Times = [];
  let free = from;
  for (let place = 0; place < others.length; place += 2) {
    const [a, b] = [others[place] ?? 0, others[place + 1] ?? 0];
    if (a > free) times.push(free, a);
    free = b;
  }
  if (free < to) times.push(free, to);
  return times;
}

export const first = (times: Times): number => times[0] ?? Number.POSITIVE_INFINITY;
export const last = (times: Times): number => times.at(-1) ?? Number.NEGATIVE_INFINITY;

/** The shortest time from a moment of the one to a moment of the other that is not earlier. */
export function shortestBetween(from: Times, to: Times): number {
  let least = Number.POSITIVE_INFINITY;
  for (let place = 0; place < to.length; place += 2) {
    const [start, end] = [to[place] ?? 0, to[place + 1] ?? 0];
    for (let other = 0; other < from.length; other += 2) {
      const [a, b] = [from[other] ?? 0, from[other + 1] ?? 0];
      if (a <= end) least = Math.min(least, Math.max(0, start - b));
    }
  }
  return least;
}
