import { type Figures, type Profile, type ReheatRoute, resolved } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import { converted, type Unit } from '#shared/units.ts';
import type { ProfileFigures } from './case.ts';

type Published = { value: number; unit: 'degF' | 'degC' }[];

const cited = (section: string) => ({
  id: 'case',
  section,
  edition: 'as the case says',
  checked: 'memory' as const,
  where: 'figures of the case',
  speaks_of: 'the food of the case',
});

const temperature = (
  figure: Published,
  comparison: 'at_or_above' | 'above' | 'at_or_below' | 'below',
  section: string,
) => ({
  ...cited(section),
  value: {
    degF: figure.find(({ unit }) => unit === 'degF')?.value ?? null,
    degC: figure.find(({ unit }) => unit === 'degC')?.value ?? null,
  },
  first: figure[0]?.unit ?? 'degF',
  comparison,
});

const time = (minutes: number, strict: boolean, section: string) => ({
  ...cited(section),
  minutes,
  comparison: strict ? ('less_than' as const) : ('at_most' as const),
});

const stage = (told: NonNullable<ProfileFigures['cooling']>[number]) => ({
  name: told.name,
  from: temperature(told.from, 'at_or_above', told.section),
  to: temperature(told.to, 'at_or_below', told.section),
  within: time(told.within_min, told.strict, told.section),
  counted: told.counted,
});

type Route = NonNullable<NonNullable<ProfileFigures['reheat']>['routes']['conventional']>;

const route = (told: Route | undefined): ReheatRoute | null =>
  told === undefined
    ? null
    : {
        target: temperature(told.target, 'at_or_above', told.section),
        held_s: told.held_s,
        stand_s: told.stand_s,
      };

const held = (told: ProfileFigures['hot_hold']) =>
  told ? temperature(told.figure, told.comparison, told.section) : null;

type Reheat = NonNullable<ProfileFigures['reheat']>;

function reheatFigures({ from, within_min: within, strict, time_section: section = '', routes }: Reheat) {
  return {
    reheat_from: from ? temperature(from, 'at_or_below', section) : null,
    reheat_within: within ? time(within, strict, section) : null,
    reheat_conventional: route(routes.conventional),
    reheat_microwave: route(routes.microwave),
    reheat_commercial: route(routes.commercial),
  } satisfies Partial<Figures>;
}

/** The classes that are cooked; the others were cooked before, and no figure speaks of them. */
const cooked: readonly FoodClass[] = [
  'intact_roast',
  'injected_or_tenderized',
  'ground',
  'sausage_raw',
  'poultry',
  'pork_whole',
  'beef_whole',
  'plant',
  'fish',
  'egg',
  'unknown',
];

type Cook = NonNullable<ProfileFigures['cook']>;

const inUnit = (figure: Published, unit: Unit): number => {
  const told = figure.find((each) => each.unit === unit);
  const other = figure[0] ?? { value: 0, unit };
  return told?.value ?? converted(other.value, other.unit, unit);
};

/** One chart for the food of the case, whatever it is: a roast's own chart and oven line are not asked beside it. */
function cookFigures({ rows, section }: Cook) {
  const chart = {
    ...cited(section),
    first: rows[0]?.figure[0]?.unit ?? ('degF' as const),
    rows: rows.map(({ figure, held_s }) => ({
      degF: inUnit(figure, 'degF'),
      degC: inUnit(figure, 'degC'),
      held_s,
    })),
  };
  return {
    cook: Object.fromEntries(cooked.map((each) => [each, chart])),
    roast_chart: null,
    roast_oven: null,
  } satisfies Partial<Figures>;
}

type ComeUp = NonNullable<ProfileFigures['come_up']>;

const comeUp = ({ from, to, within_min: within, strict, section }: ComeUp): Figures['come_up'] => ({
  from: temperature(from, 'at_or_below', section),
  to: temperature(to, 'at_or_above', section),
  within: time(within, strict, section),
});

type TimeControl = NonNullable<Figures['time_control']>;
type Form = NonNullable<TimeControl['four_hours']>;

const strictly = { at_or_above: 'above', at_or_below: 'below', above: 'above', below: 'below' } as const;

/** The same form of the rule, started only beyond its figures, not at them. */
const strictForm = (form: Form): Form => ({
  ...form,
  starts: form.starts.map((start) => ({
    ...start,
    figure: { ...start.figure, comparison: strictly[start.figure.comparison] },
  })),
});

/** By the model code's figures, whose four hours start strictly where the case says so. */
function timeControl(told: NonNullable<ProfileFigures['time_control']>, shipped: Profile | null) {
  const base = profile('fda_2022')?.figures.time_control ?? null;
  if (told.strict_start === undefined) return shipped?.figures.time_control ?? base;
  if (base?.four_hours == null || !told.strict_start) return base;
  return { ...base, four_hours: strictForm(base.four_hours) };
}

/** Every role that the case names, by its figures; the rest is the shipped profile's, where there is one. */
function ofCase(id: string, told: ProfileFigures): Profile {
  const shipped = profile(id);
  const figures: Partial<Figures> = {
    ...(told.hot_hold === undefined ? {} : { hot_hold: held(told.hot_hold) }),
    ...(told.cold_hold === undefined ? {} : { cold_hold: held(told.cold_hold) }),
    ...(told.cooling === undefined ? {} : { cooling: told.cooling.map(stage) }),
    ...(told.reheat ? reheatFigures(told.reheat) : {}),
    ...(told.cook ? cookFigures(told.cook) : {}),
    ...(told.come_up ? { come_up: comeUp(told.come_up) } : {}),
    ...(told.time_control ? { time_control: timeControl(told.time_control, shipped) } : {}),
  };
  return resolved(
    {
      id,
      name: id,
      place: 'as the case says',
      force: 'law',
      edition: 'as the case says',
      extends: null,
      notes: [],
      figures,
    },
    shipped,
  );
}

/** The limits that a case is judged by: those it carries, or a shipped profile; null when there is neither. */
export const profileOf = (id: string, figures: ProfileFigures | undefined): Profile | null =>
  figures === undefined ? profile(id) : ofCase(id, figures);
