import type { Body, Draft, Kind } from '#shared/entries/entry.ts';
import { equipmentKind } from '#shared/entries/equipment.ts';
import { foodClass } from '#shared/entries/food.ts';
import type { Role } from '#shared/entries/person.ts';
import { probeColour } from '#shared/entries/probe.ts';
import { type Spot, spot, stepName } from '#shared/entries/step-name.ts';
import type { Mapping } from './mapping.ts';
import type { Night, NightEquipment, NightFood, NightPerson, NightPlan, NightProbe } from './night.ts';

/** The kitchen of the demo night as set-up drafts, the site first, written by the one in charge. */
export function setUpDrafts(night: Night, map: Mapping): Draft[] {
  const at = map.at(night.events[0]?.at ?? night.site.as_of);
  const inCharge = night.people.find((person) => person.person_in_charge);
  if (!inCharge) throw new Error('demo night: nobody is in charge');
  const by = map.id(inCharge.id);
  const draft = <K extends Kind>(kind: K, body: Body<K>): Draft =>
    ({ id: map.freshId(at), kind, version: 1, at, entered_at: at, by, body }) as Draft;
  return [
    draft('site', siteBody(night)),
    ...night.people.map((person) => draft('person', personBody(person, map))),
    ...night.equipment.map((equipment, i) => draft('equipment', equipmentBody(equipment, i, map))),
    ...night.probes.map((probe) => draft('probe', probeBody(probe, map))),
    ...night.foods.map((food) => draft('food', foodBody(food, map))),
    ...night.plan.filter((plan) => plan.step !== 'rounds').map((plan) => draft('plan', planBody(plan, map))),
  ];
}

function siteBody({ site }: Night): Body<'site'> {
  return {
    name: site.name,
    address: `${site.town}, ${site.county}`,
    zone: site.zone,
    altitude_m: site.altitude_m,
    unit: site.unit,
    clock: '24',
    language: 'en',
    day_starts: site.day_starts,
    closed_weekdays: [],
    closed_on: [],
    profile: 'fda_2022',
    late_after_min: 15,
    odd_above: 250,
    paper: 'letter',
    // The night's own words: one reheat, within two hours of the last good look, and the manager decides.
    house: { reheat_may_return: false, reheat_within_min: 120, decides: 'manager', decide_within_min: 30 },
  };
}

function roleOf(person: NightPerson): Role {
  if (person.person_in_charge) return 'manager';
  return person.role.includes('lead') ? 'lead' : 'crew';
}

function personBody(person: NightPerson, map: Mapping): Body<'person'> {
  const initials = person.name
    .split(' ')
    .map((word) => word[0] ?? '')
    .join('')
    .slice(0, 3);
  return {
    person: map.id(person.id),
    name: person.name,
    initials,
    role: roleOf(person),
    title: person.role,
    language: person.languages[0] ?? 'en',
    phone: person.person_in_charge ? '555-0142' : null,
    on_call: person.person_in_charge === true,
    active: true,
  };
}

function equipmentBody(equipment: NightEquipment, order: number, map: Mapping): Body<'equipment'> {
  return {
    equipment: map.id(equipment.id),
    name: equipment.name,
    kind: equipmentKind.parse(equipment.kind),
    set: equipment.set_F === undefined ? null : { value: equipment.set_F, unit: 'degF' },
    order,
    note: equipment.note ?? null,
    active: true,
  };
}

function probeBody(probe: NightProbe, map: Mapping): Body<'probe'> {
  return {
    probe: map.id(probe.id),
    name: probe.tag_colour,
    colour: probeColour.parse(probe.tag_colour),
    type: probe.type,
    scale: probe.scale,
    unit: probe.scale,
    step: probe.step,
    accuracy: probe.accuracy,
    home: probe.home,
    active: true,
  };
}

function foodBody(food: NightFood, map: Mapping): Body<'food'> {
  const factory = food.class === 'sausage_cooked';
  return {
    food: map.id(food.id),
    name: food.name,
    name_es: food.name_es,
    class: foodClass.parse(food.class),
    counted: ['plant', 'sauce', 'dairy_side', 'sausage_cooked'].includes(food.class)
      ? 'not_counted'
      : food.class === 'pulled_or_chopped'
        ? 'pans'
        : 'pieces',
    sealed_commercial: factory,
    note: [food.plan, food.note].filter(Boolean).join('. '),
    active: true,
  };
}

/** "core at the end" is the core: the plan's spots are the places that a look can name. */
const spotsOf = (names: readonly string[]): Spot[] =>
  names.map((name) => spot.parse(name.split(' ')[0])).filter((name, i, all) => all.indexOf(name) === i);

function planBody(plan: NightPlan, map: Mapping): Body<'plan'> {
  const spots = spotsOf(plan.spots ?? []);
  return {
    plan: map.id(plan.id),
    step: plan.step === 'probe_check' ? 'probe_check' : stepName.parse(plan.step),
    equipment: (plan.equipment ?? []).map((id) => map.id(id)),
    every_min: plan.every_min ?? null,
    at_most_min: plan.max_gap_min ?? plan.max_min ?? null,
    checkpoints_min: plan.checkpoints_min ?? [],
    looks: spots.includes('edge') ? 'thin_ends_and_every_second_thick' : 'every_piece',
    spots,
    note: [plan.at, plan.procedure && `procedure ${plan.procedure}`, plan.who].filter(Boolean).join('; '),
    active: true,
  };
}
