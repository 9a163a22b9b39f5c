import { type Profile, resolved } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
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

function ofCase(id: string, { hot_hold: hot, cooling, reheat }: ProfileFigures): Profile {
  const route = reheat?.routes.conventional;
  const from = reheat?.from;
  const within = reheat?.within_min;
  const timeSection = reheat?.time_section ?? '';
  return resolved(
    {
      id,
      name: id,
      place: 'as the case says',
      force: 'law',
      edition: 'as the case says',
      extends: null,
      notes: [],
      figures: {
        hot_hold: hot ? temperature(hot.figure, hot.comparison, hot.section) : null,
        cooling: cooling.map((stage) => ({
          name: stage.name,
          from: temperature(stage.from, 'at_or_above', stage.section),
          to: temperature(stage.to, 'at_or_below', stage.section),
          within: time(stage.within_min, stage.strict, stage.section),
          counted: stage.counted,
        })),
        reheat_from: from ? temperature(from, 'at_or_below', timeSection) : null,
        reheat_within: within ? time(within, false, timeSection) : null,
        reheat_conventional: route
          ? {
              target: temperature(route.target, 'at_or_above', route.section),
              held_s: route.held_s,
              stand_s: null,
            }
          : null,
      },
    },
    null,
  );
}

/** The limits that a case is judged by: those it carries, or a shipped profile; null when there is neither. */
export const profileOf = (id: string, figures: ProfileFigures | undefined): Profile | null =>
  figures === undefined ? profile(id) : ofCase(id, figures);
