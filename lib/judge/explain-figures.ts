import type { Force, TemperatureFigure } from '#lib/limits/figure.ts';
import type { Figures, Profile } from '#lib/limits/profile.ts';
import type { Unit } from '#shared/units.ts';
import type { Comparison, Stage, StageName } from './answer.ts';
import type { RuleKind, StepRecord } from './record.ts';

/** A figure as a proof shows it: what it asks, where it stands, how it was checked and how it binds. */
export type ShownFigure = {
  role: 'limit' | 'start' | 'time' | 'chart' | 'oven' | 'days';
  id: string;
  section: string;
  edition: string;
  checked: 'read' | 'second_hand' | 'memory';
  where: string;
  force: Force;
  disputed: string | null;
  /** As published; null = not published in that unit. Null without a temperature. */
  value: { degF: number | null; degC: number | null } | null;
  first: Unit | null; // the unit that the rule prints first
  comparison: Comparison | null;
  minutes: number | null;
  held_s?: number; // seconds for which a figure to be reached must be held
  days?: number; // calendar days, the first one counted
  rows: readonly { degF: number; degC: number; held_s: number }[] | null;
};

/** The weakest way in which one of these figures was checked; null = each was read in its own text. */
export const leastChecked = (
  figures: readonly Pick<ShownFigure, 'checked'>[],
): Exclude<ShownFigure['checked'], 'read'> | null =>
  (['memory', 'second_hand'] as const).find((way) => figures.some(({ checked }) => checked === way)) ?? null;

type Cited = Pick<TemperatureFigure, 'id' | 'section' | 'edition' | 'checked' | 'where'> & {
  force?: Force | undefined;
  disputed?: string | undefined;
};
type TimeFigure = NonNullable<Figures['reheat_within']>;

const cited = (role: ShownFigure['role'], figure: Cited, profile: Profile): ShownFigure => ({
  role,
  id: figure.id,
  section: figure.section,
  edition: figure.edition,
  checked: figure.checked,
  where: figure.where,
  force: figure.force ?? profile.force,
  disputed: figure.disputed ?? null,
  value: null,
  first: null,
  comparison: null,
  minutes: null,
  rows: null,
});

const temperature = (role: 'limit' | 'start', figure: TemperatureFigure, profile: Profile): ShownFigure => ({
  ...cited(role, figure, profile),
  value: figure.value,
  first: figure.first,
  comparison: figure.comparison,
});

const present = <T>(all: readonly (T | null | undefined)[]): T[] =>
  all.filter((one) => one !== null && one !== undefined);

/** The temperature figures among which a stage of this kind of step finds its limit, the likeliest first. */
function limitsOf(kind: RuleKind, record: StepRecord, figures: Figures): TemperatureFigure[] {
  switch (kind) {
    case 'hot_hold':
      return present([figures.hot_hold, figures.hot_hold_roast]);
    case 'cold_hold':
      return present([figures.cold_hold]);
    case 'cooling':
    case 'noncontinuous':
      return present([...figures.cooling.map(({ to }) => to), figures.cooling_ambient?.to]);
    case 'reheat': {
      const { reheat_conventional: plain, reheat_microwave: micro, reheat_commercial: sealed } = figures;
      const { route } = record.facts;
      const own = route === 'microwave' ? micro : route === 'commercial' ? sealed : plain;
      return present([own?.target]);
    }
    case 'cook':
      return present([figures.come_up?.to]);
    case 'time_control':
      return timeForms(figures).flatMap(({ starts, stays }) =>
        present([stays, ...starts.flatMap((start) => [start.figure, start.stays])]),
      );
    default:
      return [];
  }
}

const timeForms = ({ time_control: time }: Figures) => present([time?.four_hours, time?.six_hours]);

/** The chart by which a cook, or a roast's own reheat, was judged: the one of the stage's section and lowest row. */
export function chartOf(record: StepRecord, { figures }: Profile, { limit }: Stage) {
  if (limit === null) return null;
  const own = figures.cook[record.food.class];
  const { method } = record.facts;
  const micro = method === 'microwave' ? figures.cook_microwave?.chart : undefined;
  const roast = record.food.class === 'intact_roast' ? figures.roast_chart : undefined;
  const charts = present([micro, roast, own, figures.noncontinuous?.final_chart]);
  return charts.find((chart) => chart.rows.some((row) => row[limit.unit] === limit.value)) ?? null;
}

/** The seconds that a reheat's target must be held; 0 = none. */
const heldOf = (limit: TemperatureFigure, figures: Figures): number =>
  present([figures.reheat_conventional, figures.reheat_microwave, figures.reheat_commercial]).find(
    ({ target }) => target === limit,
  )?.held_s ?? 0;

function timesOf(kind: RuleKind, figures: Figures): TimeFigure[] {
  switch (kind) {
    case 'cooling':
      return present([...figures.cooling.map(({ within }) => within), figures.cooling_ambient?.within]);
    case 'reheat':
      return present([figures.reheat_within]);
    case 'cook':
      return present([figures.come_up?.within]);
    case 'hot_hold':
      return present([figures.hot_hold_at_most, figures.record_hot_every]);
    case 'time_control':
      return timeForms(figures).map(({ within }) => within);
    case 'noncontinuous':
      return present([
        figures.noncontinuous?.initial_heating,
        ...figures.cooling.map(({ within }) => within),
      ]);
    default:
      return [];
  }
}

/** The figure from which a stage counts. */
function startOf(kind: RuleKind, name: StageName, figures: Figures): TemperatureFigure | null {
  if (kind === 'reheat') return name === 'time' ? figures.reheat_from : null;
  if (kind === 'cook') return name === 'come_up' ? (figures.come_up?.from ?? null) : null;
  if (kind !== 'cooling') return null;
  const place = figures.cooling.findIndex((stage) => stage.name === name);
  const stage = figures.cooling[place];
  if (stage === undefined) return null;
  if (stage.counted === 'from_previous' && place > 0) return figures.cooling[place - 1]?.to ?? null;
  return stage.from ?? figures.cooling[0]?.from ?? null;
}

/** The figure that gave a stage its limit: the same value and comparison, of its own section where there is one. */
export function limitFigure(
  kind: RuleKind,
  record: StepRecord,
  { figures }: Profile,
  { limit, section }: Stage,
): TemperatureFigure | null {
  if (limit === null) return null;
  const same = limitsOf(kind, record, figures).filter(
    (figure) => figure.comparison === limit.comparison && figure.value[limit.unit] === limit.value,
  );
  return same.find((figure) => figure.section === section) ?? same[0] ?? null;
}

/** The figures on which one judged stage rests, found by what the stage itself says of its limit and section. */
export function figuresOf(
  kind: RuleKind,
  name: StageName,
  record: StepRecord,
  profile: Profile,
  stage: Stage,
): ShownFigure[] {
  const { figures } = profile;
  const shown: ShownFigure[] = [];
  const byChart = record.facts.route === 'roast' || kind === 'cook';
  const mark = figures.date_mark;
  if (name === 'date_mark')
    return mark === null ? [] : [{ ...cited('days', mark.days, profile), days: mark.days.days }];
  if (name === 'oven' && figures.roast_oven !== null)
    return [
      {
        ...cited('oven', figures.roast_oven, profile),
        ...(stage.limit === null
          ? {}
          : {
              value: { degF: stage.limit.value, degC: null },
              first: stage.limit.unit,
              comparison: stage.limit.comparison,
            }),
      },
    ];
  const isChart = name === 'final_cook' || (name === 'temperature' && byChart);
  const chart = isChart ? chartOf(record, profile, stage) : null;
  if (chart !== null) return [{ ...cited('chart', chart, profile), first: chart.first, rows: chart.rows }];
  const limit = limitFigure(kind, record, profile, stage);
  if (limit !== null) {
    const held = kind === 'reheat' && name === 'temperature' ? heldOf(limit, figures) : 0;
    shown.push({ ...temperature('limit', limit, profile), ...(held > 0 ? { held_s: held } : {}) });
  }
  const surface = figures.hot_hold_surface;
  if (kind === 'hot_hold' && name === 'at_readings' && surface !== null)
    shown.push(temperature('limit', surface, profile));
  if (stage.limit_min === null || name === 'house_plan_interval') return shown;
  const times = timesOf(kind, figures).filter(({ minutes }) => minutes === stage.limit_min);
  const time = times.find(({ section }) => section === stage.section) ?? times[0];
  if (time !== undefined) shown.push({ ...cited('time', time, profile), minutes: time.minutes });
  const start = startOf(kind, name, figures);
  if (start !== null) shown.push(temperature('start', start, profile));
  return shown;
}
