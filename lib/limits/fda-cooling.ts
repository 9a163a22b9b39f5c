import { type FoodCodeEdition, source } from './fda-edition.ts';
import { pair } from './fda-values.ts';
import type { TemperatureFigure } from './figure.ts';
import type { CoolingStage, Figures } from './profile.ts';

/** 3-501.14: both times of (A) start at 135 °F; 3-501.15: methods, without any depth or thickness figure. */
export function cooling(edition: FoodCodeEdition) {
  const cited = { ...source(edition, 'cooling'), first: 'degF' } as const;
  const timed = { ...source(edition, 'cooling'), comparison: 'at_most' } as const;
  const start: TemperatureFigure = {
    ...cited,
    id: `${edition.mark}-COOL-START`,
    value: pair.hot,
    comparison: 'at_or_above',
    section: '3-501.14(A)',
    speaks_of: 'cooked TCS food: both times of (A) start here, not when the food leaves the heat',
    disputed: 'a roast held at 130 to below 135 °F: to the letter its two hours ran during the hold',
  };
  const to = (id: string, value: TemperatureFigure['value'], section: string, speaksOf: string) => ({
    ...cited,
    id: `${edition.mark}-${id}`,
    value,
    comparison: 'at_or_below' as const,
    section,
    speaks_of: speaksOf,
  });
  const cooked = 'cooked TCS food that is cooled';
  const ambient = 'TCS food made from ingredients at ambient temperature';
  const stages: CoolingStage[] = [
    {
      name: 'stage_1',
      from: start,
      to: to('COOL-1-TO', pair.warm, '3-501.14(A)(1)', cooked),
      within: {
        ...timed,
        id: `${edition.mark}-COOL-1`,
        minutes: 120,
        section: '3-501.14(A)(1)',
        speaks_of: `${cooked}: 135 to 70 °F`,
      },
      counted: 'from_start',
    },
    {
      name: 'total',
      from: start,
      to: to('COOL-T-TO', pair.cold, '3-501.14(A)(2)', cooked),
      within: {
        ...timed,
        id: `${edition.mark}-COOL-T`,
        minutes: 360,
        section: '3-501.14(A)(2)',
        speaks_of: `${cooked}: 135 to 41 °F, a total`,
      },
      counted: 'from_start',
    },
  ];
  return {
    cooling: stages,
    cooling_ambient: {
      name: 'ambient_total',
      from: null,
      to: to('COOL-AMB-TO', pair.cold, '3-501.14(B)', ambient),
      within: {
        ...timed,
        id: `${edition.mark}-COOL-AMB`,
        minutes: 240,
        section: '3-501.14(B)',
        speaks_of: ambient,
      },
      counted: 'from_start',
    },
    cooling_methods: {
      asked: {
        ...source(edition, 'cooling_methods'),
        id: `${edition.mark}-COOL-METHODS`,
        section: '3-501.15',
        speaks_of: 'ways of cooling within the times, any that suits the food',
      },
      methods: [
        'shallow_pans',
        'smaller_portions',
        'rapid_cooling_equipment',
        'stirred_in_ice_bath',
        'containers_that_pass_heat',
        'ice_as_ingredient',
        'other_effective',
        'apart_and_loosely_covered',
      ],
    },
  } satisfies Partial<Figures>;
}
