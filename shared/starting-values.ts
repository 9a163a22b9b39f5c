import type { Body } from './entries/entry.ts';
import { catalogueName, type FoodKey, foodCatalogue } from './foods.ts';
import type { Unit } from './units.ts';

/**
 * What a barbecue kitchen can start with, so that set-up takes minutes: all of it common practice, without a
 * source, and all of it to be changed. None of these figures is a limit; those stand in a profile with their
 * sections. Names are written into the book in the language of the kitchen.
 */
type Named = { key: string; name: { en: string; es: string }; chosen: boolean };
type Offered<B, Left extends keyof B> = Named & Omit<B, Left | 'name'>;

export type StartingEquipment = Offered<
  Body<'equipment'>,
  'equipment' | 'order' | 'note' | 'active' | 'set'
> & {
  set: { degF: number; degC: number } | null; // common practice
};
export type StartingFood = Offered<Body<'food'>, 'food' | 'name_es' | 'note' | 'active'>;
export type StartingProbe = Offered<Pick<Body<'probe'>, 'name' | 'colour'>, never>;
export type StartingPlanKey =
  | 'hot_hold'
  | 'line'
  | 'rest'
  | 'cold_hold'
  | 'cooling'
  | 'reheat'
  | 'probe_check';
export type StartingPlan = Omit<Body<'plan'>, 'plan' | 'equipment' | 'active' | 'note'> & {
  key: StartingPlanKey;
  chosen: boolean;
  kinds: Body<'equipment'>['kind'][]; // the equipment that it names; none = wherever the step takes place
};

/** In the order of a walk from the fire to the door. */
export const startingEquipment: readonly StartingEquipment[] = [
  { key: 'pit_1', name: { en: 'Pit 1', es: 'Pit 1' }, kind: 'pit', set: null, chosen: true },
  { key: 'pit_2', name: { en: 'Pit 2', es: 'Pit 2' }, kind: 'pit', set: null, chosen: false },
  {
    key: 'rack',
    name: { en: 'Resting rack', es: 'Estante de reposo' },
    kind: 'rack',
    set: null,
    chosen: true,
  },
  {
    key: 'cabinet_1',
    name: { en: 'Cabinet 1', es: 'Gabinete 1' },
    kind: 'heated_cabinet',
    set: { degF: 150, degC: 66 },
    chosen: true,
  },
  {
    key: 'cabinet_2',
    name: { en: 'Cabinet 2', es: 'Gabinete 2' },
    kind: 'heated_cabinet',
    set: { degF: 150, degC: 66 },
    chosen: true,
  },
  {
    key: 'cabinet_3',
    name: { en: 'Cabinet 3', es: 'Gabinete 3' },
    kind: 'heated_cabinet',
    set: { degF: 150, degC: 66 },
    chosen: false,
  },
  { key: 'oven', name: { en: 'Oven', es: 'Horno' }, kind: 'oven', set: null, chosen: true },
  { key: 'range', name: { en: 'Range', es: 'Estufa' }, kind: 'range', set: null, chosen: true },
  {
    key: 'block',
    name: { en: 'Cutting board', es: 'Tabla de cortar' },
    kind: 'cutting',
    set: null,
    chosen: true,
  },
  {
    key: 'steam_table',
    name: { en: 'Steam table', es: 'Mesa de vapor' },
    kind: 'steam_table',
    set: null,
    chosen: true,
  },
  { key: 'pass', name: { en: 'Pass', es: 'Pase' }, kind: 'pass', set: null, chosen: false },
  {
    key: 'ice_bath',
    name: { en: 'Ice bath', es: 'Baño de hielo' },
    kind: 'ice_bath',
    set: null,
    chosen: true,
  },
  {
    key: 'walk_in',
    name: { en: 'Walk-in', es: 'Cuarto frío' },
    kind: 'cooler',
    set: { degF: 37, degC: 3 },
    chosen: true,
  },
  {
    key: 'reach_in',
    name: { en: 'Reach-in', es: 'Refrigerador de línea' },
    kind: 'cooler',
    set: { degF: 38, degC: 3 },
    chosen: true,
  },
  { key: 'box_1', name: { en: 'Box 1', es: 'Caja 1' }, kind: 'insulated_box', set: null, chosen: true },
  { key: 'box_2', name: { en: 'Box 2', es: 'Caja 2' }, kind: 'insulated_box', set: null, chosen: false },
];

export const startingProbes: readonly StartingProbe[] = [
  { key: 'red', name: { en: 'Red', es: 'Rojo' }, colour: 'red', chosen: true },
  { key: 'blue', name: { en: 'Blue', es: 'Azul' }, colour: 'blue', chosen: true },
  { key: 'green', name: { en: 'Green', es: 'Verde' }, colour: 'green', chosen: false },
  { key: 'yellow', name: { en: 'Yellow', es: 'Amarillo' }, colour: 'yellow', chosen: false },
];

/** What most of these kitchens make, out of the catalogue; what stands as not chosen is offered all the same. */
const startingKeys: readonly [FoodKey, boolean][] = [
  ['brisket', true],
  ['shoulder', true],
  ['injected', false],
  ['ribs', true],
  ['turkey', true],
  ['sausage_raw', true],
  ['sausage_cooked', true],
  ['pulled', true],
  ['chopped', true],
  ['beans', true],
  ['sauce', true],
  ['potato_salad', true],
];

/** Whole meat is offered as not injected: whoever injects or tenderizes changes the class, and with it the rule. */
export const startingFoods: readonly StartingFood[] = startingKeys.flatMap(([key, chosen]) =>
  foodCatalogue
    .filter((food) => food.key === key)
    .map((food) => ({
      key,
      name: { en: catalogueName(key, 'en'), es: catalogueName(key, 'es') },
      class: food.class,
      counted: food.counted,
      sealed_commercial: food.sealed === true,
      chosen,
    })),
);

/**
 * How often to look (common practice; no section read sets an interval). The gap allowed at most is longer than
 * the interval, so that a round a little late is not yet a gap.
 */
export const startingPlans: readonly StartingPlan[] = [
  {
    key: 'hot_hold',
    chosen: true,
    step: 'hot_hold',
    kinds: ['heated_cabinet'],
    every_min: 120,
    at_most_min: 150,
    checkpoints_min: [],
    looks: 'thin_ends_and_every_second_thick',
    spots: ['edge', 'core'],
  },
  {
    key: 'line',
    chosen: true,
    step: 'hot_hold',
    kinds: ['steam_table', 'insulated_box'],
    every_min: 120,
    at_most_min: 150,
    checkpoints_min: [],
    looks: 'every_piece',
    spots: ['coldest'],
  },
  {
    key: 'rest',
    chosen: true,
    step: 'rest',
    kinds: [],
    every_min: 60,
    at_most_min: 120,
    checkpoints_min: [],
    looks: 'watch_piece',
    spots: ['edge'],
  },
  {
    key: 'cold_hold',
    chosen: true,
    step: 'cold_hold',
    kinds: [],
    every_min: 120,
    at_most_min: 270,
    checkpoints_min: [],
    looks: 'watch_piece',
    spots: ['warmest', 'air'],
  },
  {
    key: 'cooling',
    chosen: true,
    step: 'cooling',
    kinds: [],
    every_min: null,
    at_most_min: null,
    checkpoints_min: [0, 60, 120, 240, 360],
    looks: 'every_piece',
    spots: ['warmest'],
  },
  {
    key: 'reheat',
    chosen: true,
    step: 'reheat',
    kinds: [],
    every_min: 30,
    at_most_min: null,
    checkpoints_min: [],
    looks: 'every_piece',
    spots: ['coldest'],
  },
  {
    key: 'probe_check',
    chosen: true,
    step: 'probe_check',
    kinds: [],
    every_min: 1440,
    at_most_min: null,
    checkpoints_min: [],
    looks: 'watch_piece',
    spots: [],
  },
];

export type StartingChoice = { equipment: string[]; probes: string[]; foods: string[]; plans: string[] };
export type StartingThing =
  | { kind: 'equipment'; body: Body<'equipment'> }
  | { kind: 'probe'; body: Body<'probe'> }
  | { kind: 'food'; body: Body<'food'> }
  | { kind: 'plan'; body: Body<'plan'> };

type House = { unit: Unit; language: 'en' | 'es'; newId: () => string };

const displayStep = 0.1; // of a pocket thermometer, either scale

function equipmentBodies(keys: readonly string[], { unit, language, newId }: House): Body<'equipment'>[] {
  return startingEquipment
    .filter(({ key }) => keys.includes(key))
    .map(({ kind, name, set }, place) => ({
      equipment: newId(),
      name: name[language],
      kind,
      set: set === null ? null : { value: set[unit], unit },
      order: place + 1,
      note: null,
      active: true,
    }));
}

function probeBodies(keys: readonly string[], { unit, language, newId }: House): Body<'probe'>[] {
  return startingProbes
    .filter(({ key }) => keys.includes(key))
    .map(({ name, colour }) => ({
      probe: newId(),
      name: name[language],
      colour,
      type: null,
      scale: unit,
      unit,
      step: displayStep,
      accuracy: null,
      home: null,
      active: true,
    }));
}

function foodBodies(keys: readonly string[], { language, newId }: House): Body<'food'>[] {
  return startingFoods
    .filter(({ key }) => keys.includes(key))
    .map(({ name, class: foodClass, counted, sealed_commercial }) => ({
      food: newId(),
      name: name[language],
      name_es: name.es,
      class: foodClass,
      counted,
      sealed_commercial,
      note: null,
      active: true,
    }));
}

/** A plan for equipment that was not chosen is left out: naming none, it would speak of every place. */
function planBodies(
  keys: readonly string[],
  equipment: readonly Body<'equipment'>[],
  { newId }: House,
): Body<'plan'>[] {
  return startingPlans
    .filter(({ key }) => keys.includes(key))
    .map((plan) => ({ plan, named: equipment.filter(({ kind }) => plan.kinds.includes(kind)) }))
    .filter(({ plan, named }) => plan.kinds.length === 0 || named.length > 0)
    .map(({ plan: { step, every_min, at_most_min, checkpoints_min, looks, spots }, named }) => ({
      plan: newId(),
      step,
      equipment: named.map((each) => each.equipment),
      every_min,
      at_most_min,
      checkpoints_min,
      looks,
      spots,
      note: null,
      active: true,
    }));
}

/** The bodies of what was chosen (keys), with new ids. A plan names the chosen equipment of its kinds. */
export function startingThings(choice: StartingChoice, house: House): StartingThing[] {
  const equipment = equipmentBodies(choice.equipment, house);
  return [
    ...equipment.map((body) => ({ kind: 'equipment' as const, body })),
    ...probeBodies(choice.probes, house).map((body) => ({ kind: 'probe' as const, body })),
    ...foodBodies(choice.foods, house).map((body) => ({ kind: 'food' as const, body })),
    ...planBodies(choice.plans, equipment, house).map((body) => ({ kind: 'plan' as const, body })),
  ];
}

/** What is chosen before anybody has tapped. */
export const startingChoice: StartingChoice = {
  equipment: startingEquipment.filter(({ chosen }) => chosen).map(({ key }) => key),
  probes: startingProbes.filter(({ chosen }) => chosen).map(({ key }) => key),
  foods: startingFoods.filter(({ chosen }) => chosen).map(({ key }) => key),
  plans: startingPlans.filter(({ chosen }) => chosen).map(({ key }) => key),
};

/** What the rest of a new kitchen is, beside what its first form asks. */
export const startingHouse = {
  clock: { degF: '12', degC: '24' } as const,
  paper: { degF: 'letter', degC: 'a4' } as const,
  day_starts: '04:00', // when the fewest look: common practice
  late_after_min: 15, // an entry typed later than this after its look is marked late
  odd_above: { degF: 250, degC: 120 }, // food hotter than this is asked about: a slip of a digit
  house: { reheat_may_return: false, reheat_within_min: null, decides: 'manager', decide_within_min: 30 },
} as const;
