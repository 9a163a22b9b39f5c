import type { Facts } from '#lib/judge/record.ts';
import type { Profile } from '#lib/limits/profile.ts';
import {
  type Asked,
  between,
  boiling,
  type Case,
  cared,
  far,
  freezing,
  lateBy,
  look,
  type Published,
  seconds,
  temperature,
  time,
  verdictOf,
} from './crossing.ts';
import { at } from './records.ts';

/** Each route to its target, and the time on the way. */
export function reheating({ figures }: Published, profile: Profile): Case[] {
  const cases: Case[] = [];
  for (const route of ['conventional', 'microwave', 'commercial'] as const) {
    const way = figures[`reheat_${route}`];
    if (way === null) continue;
    const covers = `reheat_${route}`;
    const facts: Facts = { ...cared, route };
    const asked: Asked = { kind: 'reheat', stage: 'temperature', profile, facts, start: at(0), end: at(1) };
    cases.push(
      ...temperature(`${covers}.target`, way.target, (ofTenths, unit) =>
        verdictOf(asked, [look(1, ofTenths, unit)]),
      ),
      ...seconds(
        `${covers}.held_s`,
        way.held_s,
        (held) => verdictOf(asked, [look(1, 2120, 'degF', { held_s: held })]),
        'not_shown',
      ),
    );
    if (way.stand_s !== null)
      cases.push(
        ...seconds(
          `${covers}.stand_s`,
          way.stand_s,
          (stood) => verdictOf({ ...asked, facts: { ...facts, stood_s: stood } }, [far(1, boiling)]),
          'broken',
        ),
      );
  }
  const { reheat_from: from, reheat_within: within, reheat_conventional: way } = figures;
  if (from === null || within === null || way === null) return cases;
  const asked: Asked = { kind: 'reheat', stage: 'time', profile, start: at(0) };
  const half = between(from, way.target);
  return [
    ...cases,
    ...temperature(
      'reheat_from',
      from,
      (ofTenths, unit) => verdictOf(asked, [look(0, ofTenths, unit), far(1, boiling)]),
      { no: 'not_shown' },
    ),
    ...time(
      'reheat_within',
      within,
      (minutes) => verdictOf(asked, [far(0, freezing), far(minutes, boiling)]),
      'not_shown',
    ),
    ...lateBy('reheat_within', within, (minutes) => verdictOf(asked, [far(0, half), far(minutes, half)])),
  ];
}
