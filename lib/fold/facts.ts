import type { Verdict } from '#lib/judge/answer.ts';
import type { Facts } from '#lib/judge/record.ts';
import { conventions } from '#lib/limits/conventions.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import { converted } from '#shared/units.ts';
import type { Kitchen, Look, Member, Run } from './book.ts';
import { timeFacts } from './time-facts.ts';

/** What a run's facts are taken from. */
export type FactSources = {
  kitchen: Kitchen;
  profile: Profile | null;
  made: Body<'batch'>['made'];
  food: Body<'food'> | null;
  /** All runs of the batch, in order of start. */
  runs: readonly Pick<Run, 'step' | 'members' | 'equipment' | 'places' | 'details' | 'key'>[];
  air: ReadonlyMap<string, Look[]>;
  /** The verdict of roast_cook that a piece brings from before this batch; `none` where there is none. */
  inherited: Verdict | 'none';
  asOf: number;
};

const isBoolean = (value: unknown): value is boolean => typeof value === 'boolean';

/** Air readings of the place in which a piece was cooked, while it was there. */
function ovenLooks(equipment: string | null, member: Member, sources: FactSources): Look[] {
  const end = member.until ?? sources.asOf;
  const air = equipment === null ? [] : (sources.air.get(equipment) ?? []);
  return air.filter(({ at }) => at >= member.from && at <= end);
}

/**
 * The worst that the oven was seen at in °F, from the air readings of its place and from what the step says: the
 * lowest, and for moist heat, whose line is an upper one, the highest.
 */
function ovenTemp(equipment: string | null, member: Member, sources: FactSources): number | null {
  const seen = ovenLooks(equipment, member, sources).map(({ value, unit }) => converted(value, unit, 'degF'));
  const said = member.details.oven_temp_F;
  const all = said === undefined ? seen : [...seen, said];
  if (all.length === 0) return null;
  return member.details.oven === 'high_humidity' ? Math.max(...all) : Math.min(...all);
}

/**
 * Whether the record covers the oven: the step says its temperature, or its air was read from start to end with no
 * gap over 30 minutes. A few readings in twelve hours can show that an oven was too cool, never that it was not
 * (docs/judge.md 4.1: "a cook record with gaps").
 */
export function ovenCovered(
  run: Pick<Run, 'equipment'>,
  member: Member,
  sources: Pick<FactSources, 'air' | 'asOf'>,
): boolean {
  if (member.details.oven_temp_F !== undefined) return true;
  const air = run.equipment === null ? [] : (sources.air.get(run.equipment) ?? []);
  const end = member.until ?? sources.asOf;
  const moments = air.map(({ at }) => at).filter((at) => at >= member.from && at <= end);
  const gap = conventions.heat_on_gap_min * 60_000;
  return [...moments, end].every((at, index) => at - (moments[index - 1] ?? member.from) <= gap);
}

function cookFacts(run: FactSources['runs'][number], member: Member, sources: FactSources): Facts {
  const kind = run.equipment === null ? undefined : sources.kitchen.equipment.get(run.equipment)?.kind;
  return {
    oven: run.details.oven ?? (kind === 'pit' ? 'pit' : null),
    oven_temp: ovenTemp(run.equipment, member, sources),
    mass_lb: member.massLb,
    method: typeof run.details.method === 'string' ? run.details.method : undefined,
  };
}

/** A sealed commercial package is warmed once by 3-403.11(C); every later reheat is a reheat like any other. */
function routeOf(run: FactSources['runs'][number], member: Member, sources: FactSources): Facts['route'] {
  if (run.details.route !== undefined) return run.details.route;
  const first = !sources.runs.some(
    (other) =>
      other.step === 'reheat' &&
      other.members.some(({ piece, from }) => piece === member.piece && from < member.from),
  );
  const warmed = sources.food?.sealed_commercial === true && first && sources.made !== 'cut';
  return warmed ? 'commercial' : 'conventional';
}

/** What the judge asks beside the readings, for one piece of one run. `roastCook` is that of the piece by then. */
export function factsOf(
  run: FactSources['runs'][number],
  member: Member,
  roastCook: Verdict | 'none' | undefined,
  sources: FactSources,
): Facts {
  const { details } = run;
  switch (run.step) {
    case 'cook':
      return cookFacts(run, member, sources);
    case 'reheat':
      return {
        ...cookFacts(run, member, sources),
        route: routeOf(run, member, sources),
        covered: isBoolean(details.covered) ? details.covered : null,
        stirred: details.stirred ?? null,
        stood_s: details.stood_s ?? null,
      };
    case 'cooling':
      return {
        roast_cook: roastCook,
        ingredients: details.ingredients,
        prepared_at: details.prepared_at === undefined ? null : msOf(details.prepared_at),
      };
    case 'time_control':
      return timeFacts(details, member.from, member.until, sources.profile);
    default:
      return { roast_cook: roastCook };
  }
}
