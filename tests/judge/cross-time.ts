import type { Facts } from '#lib/judge/record.ts';
import type { Figures, Profile } from '#lib/limits/profile.ts';
import {
  type Asked,
  type Case,
  far,
  look,
  type Published,
  temperature,
  time,
  verdictOf,
} from './crossing.ts';
import { around, keeps, units } from './published.ts';
import { at } from './records.ts';

type Form = NonNullable<NonNullable<Figures['time_control']>['four_hours']>;

function timeForm(profile: Profile, name: 'four_hours' | 'six_hours', form: Form): Case[] {
  const covers = `time_control.${name}`;
  const facts: Facts = { mode: name === 'six_hours' ? '6h' : '4h', removed_at: at(0), gone_at: at(30) };
  const asked: Asked = { kind: 'time_control', stage: 'start', profile, facts };
  const cases = form.starts.flatMap(({ figure, only, stays }, place) => {
    const named: Facts = { ...facts, starts_as: only ?? null };
    const starts = form.starts.filter((one) => one.only === undefined || one.only === only);
    const path = `${covers}.starts.${place}`;
    const begun = units.flatMap((unit) =>
      around(figure.value, unit).map(
        (ofTenths): Case => ({
          covers: `${path}.figure.value`,
          what: `${ofTenths / 10} ${unit}`,
          expected: starts.some((one) => keeps(one.figure, unit, ofTenths)) ? 'kept' : 'broken',
          actual: verdictOf({ ...asked, facts: named }, [look(-1, ofTenths, unit)]),
        }),
      ),
    );
    if (stays === undefined) return begun;
    // Out at a temperature that only this start allows, so that its condition binds.
    const warm = { degF: 60 };
    return [
      ...begun,
      ...temperature(`${path}.stays`, stays, (ofTenths, unit) =>
        verdictOf({ ...asked, stage: 'warmth', facts: named }, [
          far(-1, warm),
          look(1, ofTenths, unit, { spot: 'warmest' }),
        ]),
      ),
    ];
  });
  if (form.stays !== null)
    cases.push(
      ...temperature(`${covers}.stays`, form.stays, (ofTenths, unit) =>
        verdictOf({ ...asked, stage: 'warmth' }, [look(1, ofTenths, unit, { spot: 'warmest' })]),
      ),
    );
  return [
    ...cases,
    ...time(`${covers}.within`, form.within, (minutes) =>
      verdictOf({ ...asked, stage: 'time', facts: { ...facts, gone_at: at(minutes) } }, []),
    ),
  ];
}

/** Food kept by time, and the first heat of a two-part cook. */
export function timed({ figures }: Published, profile: Profile): Case[] {
  const { time_control: rule, noncontinuous: parts } = figures;
  const cases: Case[] = [];
  for (const name of ['four_hours', 'six_hours'] as const) {
    const form = rule?.[name] ?? null;
    if (form !== null) cases.push(...timeForm(profile, name, form));
  }
  if (parts === null) return cases;
  const heated = (minutes: number) =>
    verdictOf(
      {
        kind: 'noncontinuous',
        stage: 'initial_heating',
        profile,
        facts: { heat_from: at(0), heat_to: at(minutes) },
      },
      [],
    );
  return [...cases, ...time('noncontinuous.initial_heating', parts.initial_heating, heated)];
}
