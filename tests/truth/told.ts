import type { Facts, RuleKind } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Chance } from './chance.ts';
import { instant } from './clock.ts';

/** What was so of a step, and what of it somebody noted: the same members, some of them forgotten. */
export type Told = { class: FoodClass; truth: Facts; facts: Facts };

const plainClasses = ['beef_whole', 'poultry', 'ground', 'plant', 'unknown'] as const;
const cookedClasses = [
  'intact_roast',
  'intact_roast',
  'intact_roast',
  ...plainClasses,
  'pork_whole',
  'fish',
  'egg',
  'sausage_raw',
  'injected_or_tenderized',
] as const;

/** The same facts with each of these left out by so much chance. */
function forgotten(chance: Chance, truth: Facts, names: readonly (keyof Facts)[], share: number): Facts {
  const left: Facts = { ...truth };
  for (const name of names) if (chance.is(share)) Object.assign(left, { [name]: null });
  return left;
}

function microwaved(chance: Chance, how: Facts): Pick<Told, 'truth' | 'facts'> {
  const truth: Facts = {
    ...how,
    covered: chance.is(0.85),
    stirred: chance.is(0.95),
    stood_s: chance.one([120, 120, 150, 90]),
  };
  return { truth, facts: forgotten(chance, truth, ['covered', 'stirred', 'stood_s'], 0.15) };
}

function inOven(chance: Chance, how: Facts): Pick<Told, 'truth' | 'facts'> {
  const oven = chance.one(['still_dry', 'still_dry', 'convection', 'high_humidity', 'pit'] as const);
  const truth: Facts = {
    ...how,
    oven,
    oven_temp: chance.is(0.3) ? chance.one([250, 325, 350]) : Math.round(chance.between(200, 375)),
    mass_lb: chance.is(0.2) ? 10 : Math.round(chance.between(40, 180)) / 10,
  };
  return { truth, facts: forgotten(chance, truth, ['oven', 'oven_temp', 'mass_lb'], 0.15) };
}

function hot(chance: Chance): Told {
  const facts: Facts = { roast_cook: chance.one(['kept', 'not_shown', 'broken', 'none'] as const) };
  if (chance.is(0.3)) return { class: 'intact_roast', truth: facts, facts };
  return { class: chance.one(plainClasses), truth: {}, facts: {} };
}

function cooled(chance: Chance): Told {
  if (chance.is(0.15)) {
    const truth: Facts = { ingredients: 'ambient', prepared_at: instant(chance.between(-20, 15)) };
    return { class: 'sauce', truth, facts: forgotten(chance, truth, ['prepared_at'], 0.1) };
  }
  if (!chance.is(0.15)) return { class: chance.one(plainClasses), truth: {}, facts: {} };
  const facts: Facts = { roast_cook: chance.one(['kept', 'not_shown', 'broken']) };
  return { class: 'intact_roast', truth: facts, facts };
}

function reheated(chance: Chance): Told {
  const route = chance.one(['conventional', 'conventional', 'microwave', 'commercial', 'roast'] as const);
  if (route === 'roast') return { class: 'intact_roast', ...inOven(chance, { route }) };
  const plain = chance.one(plainClasses);
  if (route === 'microwave') return { class: plain, ...microwaved(chance, { route }) };
  return { class: plain, truth: { route }, facts: { route } };
}

function cooked(chance: Chance): Told {
  const food = chance.one(cookedClasses);
  if (chance.is(0.1)) return { class: food, ...microwaved(chance, { method: 'microwave' }) };
  return { class: food, ...inOven(chance, {}) };
}

/** Out of control at minute 0. What is gone is noted; what nobody noted as gone is still there. */
function timed(chance: Chance, { length, ended }: Step): Told {
  const truth: Facts = {
    mode: chance.one(['4h', '4h', '6h'] as const),
    removed_at: instant(0),
    gone_at: ended ? instant(length) : null,
    starts_as: chance.is(0.3) ? chance.one(['produce_cut', 'package_opened'] as const) : null,
    written_procedure: chance.is(0.8),
    marked: chance.is(0.8),
  };
  const facts = forgotten(chance, truth, ['removed_at', 'written_procedure', 'marked'], 0.15);
  return { class: chance.one(plainClasses), truth, facts };
}

/** A first heat, a cooling and a last cook, in the minutes of the step. */
function inParts(chance: Chance, { length }: Step): Told {
  const heatTo = chance.is(0.1) ? 60 : chance.between(20, Math.min(85, length * 0.3));
  const truth: Facts = {
    heat_from: instant(0),
    heat_to: instant(heatTo),
    final_from: instant(chance.between(heatTo + 0.3 * (length - heatTo), length - 10)),
    written: chance.is(0.8),
    approved: chance.is(0.8),
  };
  const facts = forgotten(chance, truth, ['heat_from', 'written', 'approved'], 0.15);
  return { class: chance.one(cookedClasses), truth, facts };
}

type Step = { length: number; ended: boolean };

/** What is known of a step beside its temperatures. */
export function toldOf(kind: RuleKind, chance: Chance, step: Step): Told {
  switch (kind) {
    case 'hot_hold':
      return hot(chance);
    case 'cold_hold':
      return { class: chance.one(plainClasses), truth: {}, facts: {} };
    case 'cooling':
      return cooled(chance);
    case 'reheat':
      return reheated(chance);
    case 'cook':
      return cooked(chance);
    case 'time_control':
      return timed(chance, step);
    case 'noncontinuous':
      return inParts(chance, step);
  }
}

const profiles = profileIds.map((id) => profile(id)).filter((one) => one !== null);

const having = (has: (figures: Profile['figures']) => boolean): readonly Profile[] =>
  profiles.filter(({ figures }) => has(figures));

/** Places with a rule of this kind that most have not, so that it comes up often enough. */
const rare: Partial<Record<RuleKind, readonly Profile[]>> = {
  hot_hold: having(
    (one) => one.hot_hold_at_most !== null || one.record_hot_every !== null || one.hot_hold_surface !== null,
  ),
  cook: having(({ come_up: up }) => up !== null),
};
const ruled: Partial<Record<RuleKind, readonly Profile[]>> = {
  time_control: having(({ time_control: rule }) => rule !== null),
  noncontinuous: having(({ noncontinuous: rule }) => rule !== null),
};

/** Mostly the first profile, else any; of a rule that few places have, one of those that have it. */
export function profileFor(kind: RuleKind, chance: Chance): Profile {
  const [standard] = profiles;
  if (standard === undefined) throw new Error('truth: there is no profile');
  const few = rare[kind];
  if (few !== undefined && chance.is(0.2)) return chance.one([few[0] ?? standard, ...few]);
  return chance.is(0.6) ? standard : chance.one([standard, ...(ruled[kind] ?? profiles)]);
}
