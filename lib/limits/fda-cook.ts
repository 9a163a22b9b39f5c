import { type FoodCodeEdition, source } from './fda-edition.ts';
import { pair } from './fda-values.ts';
import type { Figures } from './profile.ts';

/**
 * 3-401.11(A), .12, .13 and .14. Classes cooked before (pulled, factory-cooked, sauces, sides) have no row; the
 * roast has its chart and oven line. A food of unknown class is read on the strictest row, poultry's.
 */
export function cooking(edition: FoodCodeEdition) {
  const rows = { ...source(edition, 'cook_rows'), first: 'degF' } as const;
  const whole = {
    ...rows,
    id: `${edition.mark}-COOK-1`,
    section: '3-401.11(A)(1)',
    speaks_of: 'fish, whole meat including pork, eggs for immediate service: all parts',
    rows: [{ degF: 145, degC: 63, held_s: 15 }],
  };
  const ground = {
    ...rows,
    id: `${edition.mark}-COOK-2`,
    section: '3-401.11(A)(2)',
    speaks_of: 'ground, injected or mechanically tenderized meat, pooled eggs: any one row, all parts',
    rows: [
      { degF: 145, degC: 63, held_s: 180 },
      { degF: 150, degC: 66, held_s: 60 },
      { degF: 155, degC: 68, held_s: edition.ground_s },
      { degF: 158, degC: 70, held_s: 0 },
    ],
  };
  const poultry = {
    ...rows,
    id: `${edition.mark}-COOK-3`,
    section: '3-401.11(A)(3)',
    speaks_of: 'poultry, stuffed food, wild game: all parts; and food of a class that nobody knows',
    rows: [{ ...pair.reheated, held_s: edition.poultry_s }],
  };
  return {
    cook: {
      beef_whole: whole,
      pork_whole: whole,
      fish: whole,
      injected_or_tenderized: ground,
      ground,
      sausage_raw: ground,
      egg: ground,
      poultry,
      unknown: poultry,
      plant: {
        ...source(edition, 'cook_plant'),
        first: 'degF',
        id: `${edition.mark}-COOK-PLANT`,
        section: '3-401.13',
        speaks_of: 'plant foods cooked for hot holding',
        rows: [{ ...pair.hot, held_s: 0 }],
      },
    },
    cook_microwave: {
      chart: {
        ...source(edition, 'cook_microwave'),
        first: 'degF',
        id: `${edition.mark}-COOK-MICRO`,
        section: '3-401.12',
        speaks_of:
          'raw animal food cooked in a microwave: all parts, rotated or stirred, covered, stood 2 min',
        rows: [{ ...pair.reheated, held_s: 0 }],
      },
      stand_s: 120,
    },
    noncontinuous: noncontinuous(edition),
  } satisfies Partial<Figures>;
}

/** 3-401.14: the last step is cooked by the food's own row, not to one figure for all. */
function noncontinuous(edition: FoodCodeEdition) {
  const asked = (id: string, section: string, speaksOf: string) => ({
    ...source(edition, 'noncontinuous'),
    id: `${edition.mark}-NC-${id}`,
    section,
    speaks_of: speaksOf,
  });
  return {
    initial_heating: {
      ...asked('HEAT', '3-401.14', 'the first heating of food that is chilled and cooked through later'),
      minutes: 60,
      comparison: 'at_most' as const,
    },
    cooling: asked('COOL', '3-401.14', 'cooling at once after the first heating, by 3-501.14(A)'),
    final_cook: asked('COOK', '3-401.14', 'cooking before sale, by the food’s own row of 3-401.11(A) to (C)'),
    final_chart: null,
    procedure: asked(
      'PROC',
      '3-401.14',
      'procedures in writing, approved beforehand, kept and shown on request',
    ),
  };
}
