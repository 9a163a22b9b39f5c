import { describe, expect, test } from 'vitest';
import type { Profile } from '#lib/limits/profile.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { casesOf } from './boundary-cases.ts';
import type { Case } from './crossing.ts';
import { around, keeps } from './published.ts';

const profiles = profileIds.map((id) => profile(id)).filter((one) => one !== null);

/** Every number in a profile's figures, by its path. */
function numbersIn(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) =>
    numbersIn(part, path === '' ? name : `${path}.${name}`),
  );
}

/** Figures that no small record can cross, and why. One of a new kind is in no list and fails the test. */
const notCrossed: readonly { why: string; is: (path: string, one: Profile) => boolean }[] = [
  {
    why: 'a defence is named beside a broken hold: no verdict rests on its minutes',
    is: (path) => path.startsWith('hot_hold_defences.'),
  },
  {
    why: 'a later cooling stage starts at the figure of the stage before, and is crossed there',
    is: (path, { figures }) => {
      const place = /^cooling\.(\d)\.from\./.exec(path)?.[1];
      return place !== undefined && figures.cooling[Number(place)]?.counted === 'from_previous';
    },
  },
  {
    why: 'counted from when it was made, which no record of cooked food says: never shown',
    is: (path, { figures }) => /^cooling\.0\./.test(path) && figures.cooling[0]?.from === null,
  },
  {
    why: 'a roast is judged by the roast chart, and its own rows are the same',
    is: (path, { figures }) => path.startsWith('cook.intact_roast.') && figures.roast_chart !== null,
  },
  {
    why: 'the air of the unit is a fact that is typed in °F',
    is: (path) => path === 'cooling_untimed.air.value.degC',
  },
  {
    why: 'the mark counts days; the cold that it asks for is the cold holding beside it',
    is: (path) => path.startsWith('date_mark.at.'),
  },
];

const casesBy = new Map(profiles.map((one) => [one.id, casesOf(one)]));
const said = ({ covers, what, expected, actual }: Case) => `${covers} at ${what}: ${expected}, not ${actual}`;

test.each(profileIds)('%s: each figure just missed, exactly met and just kept', (id) => {
  const cases = casesBy.get(id) ?? [];
  expect(cases.filter(({ expected, actual }) => expected !== actual).map(said)).toEqual([]);
});

describe('no figure is left out', () => {
  test('each number of each profile is crossed, or stands in the list of those that cannot be', () => {
    const left = profiles.flatMap((one) => {
      const covers = [...new Set((casesBy.get(one.id) ?? []).map((each) => each.covers))];
      return numbersIn(one.figures)
        .filter((path) => !covers.some((prefix) => path === prefix || path.startsWith(`${prefix}.`)))
        .filter((path) => !notCrossed.some(({ is }) => is(path, one)))
        .map((path) => `${one.id}: ${path}`);
    });
    expect(left).toEqual([]);
  });
  test.each(notCrossed)('still so: $why', ({ is }) => {
    expect(profiles.some((one) => numbersIn(one.figures).some((path) => is(path, one)))).toBe(true);
  });
  test('a roast that is cooked by the roast chart has the same rows of its own', () => {
    for (const { figures } of profiles)
      if (figures.roast_chart !== null && figures.cook.intact_roast !== undefined)
        expect(figures.cook.intact_roast.rows).toEqual(figures.roast_chart.rows);
  });
});

/** 135 °F is printed as 57 °C; 63 °C alone is 145.4 °F; 130 °F alone is 54.44… °C, which no tenth meets. */
describe('what a figure asks is worked out apart from the judge', () => {
  const hot = { value: { degF: 135, degC: 57 }, comparison: 'at_or_above' } as const;
  test.each([
    ['degF', 1349, false],
    ['degF', 1350, true],
    ['degC', 569, false],
    ['degC', 570, true],
  ] as const)('135 °F, 57 °C or above: %s %s tenths', (unit, ofTenths, kept) => {
    expect(keeps(hot, unit, ofTenths)).toBe(kept);
  });
  test('a unit that is not printed is converted, not rounded', () => {
    expect(around({ degF: null, degC: 63 }, 'degF')).toEqual([1453, 1454, 1455]);
    expect(around({ degF: 130, degC: null }, 'degC')).toEqual([544, 545]);
    expect(around({ degF: 41, degC: null }, 'degC')).toEqual([49, 50, 51]);
  });
});

describe('a figure that the judge has wrong by the least is found', () => {
  const fda = profile('fda_2022');
  if (fda === null) throw new Error('tests: fda_2022 is missing');
  const { figures } = fda;
  const { hot_hold: hot, reheat_within: within, roast_chart: roast, cold_hold: cold } = figures;
  if (hot === null || within === null || roast === null || cold === null)
    throw new Error('tests: no figures');
  const wrong: [string, Partial<Profile['figures']>, string[]][] = [
    [
      'above for at or above',
      { hot_hold: { ...hot, comparison: 'above' } },
      ['hot_hold.value', 'hot_hold.value'],
    ],
    [
      'a tenth more in one unit',
      { cold_hold: { ...cold, value: { degF: 41, degC: 5.1 } } },
      ['cold_hold.value'],
    ],
    [
      'less than for at most',
      { reheat_within: { ...within, comparison: 'less_than' } },
      ['reheat_within.minutes'],
    ],
    [
      'a second more',
      {
        roast_chart: {
          ...roast,
          rows: roast.rows.map((row) => (row.degF === 130 ? { ...row, held_s: 6721 } : row)),
        },
      },
      Array(4).fill('roast_chart.rows'), // at the row and just above it, in both units
    ],
  ];
  test.each(wrong)('%s', (_, changed, expected) => {
    const judged = { ...fda, figures: { ...figures, ...changed } };
    const found = casesOf(fda, judged).filter((one) => one.expected !== one.actual);
    expect(found.map(({ covers }) => covers)).toEqual(expected);
  });
});
