import type { Facts, JudgedReading, RuleKind, StepRecord } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import { Chance } from './chance.ts';
import { instant, minuteOf } from './clock.ts';
import { degFAt, type Food, foodIn, type Somewhere, timesOf } from './food.ts';
import { LEAD_IN, type Setting, settingOf } from './surroundings.ts';
import { profileFor, toldOf } from './told.ts';

/** A reading with what was true when it was taken. */
export type Taken = {
  reading: JudgedReading;
  food: Food;
  where: Somewhere | 'air';
  degF: number; // the truth, at that place and moment
};

/** How often somebody looked, in minutes. */
export const intervals = [15, 30, 60, 120, 240] as const;
export type Interval = (typeof intervals)[number];

/** One step as it was, and as it was written down. */
export type History = {
  seed: number;
  kind: RuleKind;
  profile: Profile;
  error: number; // the greatest error of a thermometer, °F; 0 = exact
  interval: Interval;
  groups: ReadonlyMap<number | null, Food>; // null = the batch
  taken: readonly Taken[]; // in the order of the record's readings
  /** What the record's facts would be if nobody had forgotten one. */
  truth: Facts;
  record: StepRecord;
};

export const kinds = [
  'hot_hold',
  'cold_hold',
  'cooling',
  'reheat',
  'cook',
  'time_control',
  'noncontinuous',
] as const satisfies readonly RuleKind[];

const lengths: Record<RuleKind, readonly [number, number]> = {
  hot_hold: [30, 720],
  cold_hold: [30, 720],
  cooling: [120, 600],
  reheat: [20, 240],
  cook: [60, 720],
  time_control: [60, 480],
  noncontinuous: [150, 900],
};

/** What this kitchen reads at a look. */
const habits: readonly [readonly (Spot | null)[], ...(readonly (Spot | null)[])[]] = [
  ['edge'],
  ['core'],
  ['core'],
  ['edge', 'core'],
  ['coldest'],
  ['warmest'],
  ['coldest', 'warmest'],
  [null],
  ['surface', 'core'],
];

/** A reading without a spot is of the rule's natural place (docs/judge.md, section 2). */
const natural: Record<RuleKind, readonly [Somewhere, ...Somewhere[]]> = {
  hot_hold: ['coldest', 'edge'],
  cold_hold: ['warmest'],
  cooling: ['warmest', 'core'],
  reheat: ['coldest', 'core'],
  cook: ['coldest', 'core'],
  time_control: ['edge'],
  noncontinuous: ['core'],
};

/** Seconds that a cook counts, from a glance to the longest row of the roast chart. */
const counted = [5, 15, 17, 20, 60, 134, 300, 720, 2160, 6720] as const;

/** For how many seconds, counted to `most`, no place read fell below what it showed: the note is true of the food. */
function heldFor(food: Food, where: Somewhere, minute: number, value: number, most: number): number {
  if (where === 'warmest') return 0;
  const read = where === 'coldest' ? (['surface', 'edge', 'core'] as const) : [where];
  let held = most;
  for (const place of read) {
    const above = timesOf(food, place, 'above', value - 1e-9, minute, minute + held / 60);
    const from = above[0] ?? Number.POSITIVE_INFINITY;
    held = from > minute ? 0 : Math.min(held, Math.floor(((above[1] ?? minute) - minute) * 60));
  }
  return held;
}

/** A thermometer that is off by no more than `error` °F: its own lean, and a shiver each time. */
type Probe = { name: string; unit: Unit; lean: number };

function shown(chance: Chance, truth: number, probe: Probe, error: number): number {
  const exact = probe.unit === 'degF' ? truth : (truth - 32) / 1.8;
  if (error === 0) return exact;
  const most = probe.unit === 'degF' ? error : error / 1.8;
  const off = probe.lean * most + chance.between(-0.2, 0.2) * most;
  const read = exact + Math.max(-most, Math.min(most, off));
  const rounded = Math.round(read * 10) / 10; // what its display can say
  return Math.abs(rounded - exact) <= most ? rounded : exact;
}

type Scene = {
  kind: RuleKind;
  chance: Chance;
  error: number;
  groups: ReadonlyMap<number | null, Food>;
  probes: readonly [Probe, ...Probe[]];
  habit: readonly (Spot | null)[];
  notes: boolean; // seconds are noted
};

function take(scene: Scene, minute: number, piece: number | null, food: Food, spot: Spot | null): Taken {
  const { chance, kind, error } = scene;
  const at = instant(minute);
  const exact = minuteOf(at);
  const probe = chance.one(scene.probes);
  const where = spot ?? chance.one(natural[kind]);
  const truth = where === 'air' ? chance.between(30, 250) : degFAt(food, where, exact);
  const held =
    where === 'air' || !scene.notes || chance.is(0.2)
      ? null
      : heldFor(food, where, exact, truth, chance.one(counted));
  const reading: JudgedReading = {
    at,
    value: shown(chance, truth, probe, error),
    unit: probe.unit,
    spot,
    piece,
    probe: probe.name,
    held_s: held,
    source: 'hand',
    suspect: false,
    correction: null,
  };
  return { reading, food, where, degF: truth };
}

/** One look: each piece that somebody thought of, each place by habit, one after the other or at once. */
function look(scene: Scene, minute: number, taken: Taken[]): void {
  const { chance } = scene;
  const pause = chance.is(0.5) ? 0 : chance.between(0.1, 1);
  let at = minute;
  for (const [piece, food] of scene.groups) {
    if (chance.is(0.1)) continue;
    const habit = chance.is(0.1) ? chance.one(habits) : scene.habit;
    for (const spot of habit) {
      taken.push(take(scene, at, piece, food, spot));
      at += pause;
    }
  }
  const [first] = scene.groups;
  if (first !== undefined && chance.is(0.15)) taken.push(take(scene, at, first[0], first[1], 'air'));
}

function lookMinutes(chance: Chance, interval: number, length: number): number[] {
  const minutes: number[] = [];
  if (chance.is(0.6)) minutes.push(-chance.between(0.1, 20)); // the last look before the step
  if (chance.is(0.4)) minutes.push(0);
  for (let at = chance.between(0, interval); at < length; at += interval * chance.between(0.85, 1.15))
    if (!chance.is(0.05)) minutes.push(at);
  if (chance.is(0.4)) minutes.push(length - chance.between(0, 6));
  return minutes;
}

function logger(scene: Scene, length: number, taken: Taken[]): void {
  const { chance } = scene;
  const every = chance.one([1, 2, 5, 10]);
  const [first] = scene.groups;
  if (first === undefined) return;
  const spot = chance.one(['edge', 'coldest', 'warmest', 'core'] as const);
  const from = chance.is(0.7) ? 0 : chance.between(0, 30);
  for (let at = from; at <= length; at += every) {
    const one = take(scene, at, first[0], first[1], spot);
    taken.push({ ...one, reading: { ...one.reading, source: 'logger' } });
  }
}

function groupsOf(chance: Chance, setting: Setting): Map<number | null, Food> {
  const count = chance.one([1, 1, 1, 2, 3]);
  const names: (number | null)[] = Array.from({ length: count }, (_, place) => place + 1);
  if (chance.is(0.25)) names[0] = null;
  return new Map(
    names.map((name) => {
      const apart = chance.between(-3, 3); // its shelf
      const edge = setting.tau.edge * chance.between(0.8, 1.2);
      const core = setting.tau.core * chance.between(0.8, 1.2);
      const tau = {
        surface: edge * chance.between(0.3, 0.8),
        edge,
        core: Math.abs(core - edge) < 0.5 ? edge + 0.5 : core,
      };
      const first = setting.first + apart;
      const surroundings = setting.stretches.map((one) => ({ ...one, around: one.around + apart }));
      return [name, foodIn(tau, surroundings, { surface: first, edge: first, core: first })];
    }),
  );
}

function probesOf(chance: Chance): [Probe, ...Probe[]] {
  const probe = (name: string): Probe => ({
    name,
    unit: chance.is(0.75) ? 'degF' : 'degC',
    lean: chance.one([-0.8, -0.5, 0, 0.5, 0.8]),
  });
  return chance.is(0.6) ? [probe('red')] : [probe('red'), probe('blue')];
}

/** Entered as read; some late: their order in the record says nothing. */
function entered(chance: Chance, taken: Taken[]): Taken[] {
  taken.sort((a, b) => a.reading.at - b.reading.at);
  if (!chance.is(0.25)) return taken;
  const late = taken.filter(() => chance.is(0.2));
  return [...taken.filter((one) => !late.includes(one)), ...late];
}

const errors = [0, 0, 0, 0, 0.5, 1, 2, 4] as const;

/** The kind of step of this seed's history, without making the rest of it. */
export const kindOf = (seed: number): RuleKind => new Chance(seed).one(kinds);

/** The history of this seed: the same one each time. */
export function historyOf(seed: number): History {
  const chance = new Chance(seed);
  const kind = chance.one(kinds);
  const used = profileFor(kind, chance);
  const error = chance.one(errors);
  const interval = chance.one(intervals);
  const [least, most] = lengths[kind];
  // Where a come-up has its hours, most cooks are long enough to miss them.
  const isSlow = kind === 'cook' && used.figures.come_up !== null;
  const length = Math.round(chance.between(isSlow ? 300 : least, most));
  const ended = chance.is(0.7);
  const { class: foodClass, truth, facts } = toldOf(kind, chance, { length, ended });
  const groups = groupsOf(chance, settingOf(kind, chance, length, truth, isSlow));
  const scene: Scene = {
    kind,
    chance,
    error,
    groups,
    probes: probesOf(chance),
    habit: chance.one(habits),
    notes: chance.is(0.8),
  };
  const all: Taken[] = [];
  for (const minute of lookMinutes(chance, interval, length)) look(scene, minute, all);
  if (chance.is(0.08)) logger(scene, length, all);
  const taken = entered(chance, all);
  const seenAt = chance.is(0.8) ? length + chance.whole(0, 60) : chance.whole(5, length);
  const record: StepRecord = {
    food: { class: foodClass, pieces: chance.is(0.5) ? groups.size : null },
    facts,
    planIntervalMin: chance.is(0.5) ? chance.one([60, 120]) : null,
    start: chance.is(0.9) ? instant(0) : null,
    end: ended ? instant(length) : null,
    asOf: instant(seenAt),
    readings: taken.map(({ reading }) => reading),
  };
  return { seed, kind, profile: used, error, interval, groups, taken, truth, record };
}

/** The first minute of which the truth is known. */
export const knownFrom = LEAD_IN;
