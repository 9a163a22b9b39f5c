import { type FoodCodeEdition, source } from './fda-edition.ts';
import { pair } from './fda-values.ts';
import type { Figures } from './profile.ts';

/** 3-403.11 and 3-403.10. The 2 h of (D) name (A), (B) and (C) only. */
export function reheating(edition: FoodCodeEdition) {
  const cited = { ...source(edition, 'reheat'), first: 'degF', comparison: 'at_or_above' } as const;
  return {
    reheat_from: {
      ...cited,
      id: `${edition.mark}-REHEAT-D-FROM`,
      value: pair.cold,
      comparison: 'at_or_below',
      section: '3-403.11(D)',
      speaks_of: 'the temperature from which the time of reheating counts',
    },
    reheat_within: {
      ...source(edition, 'reheat'),
      id: `${edition.mark}-REHEAT-D`,
      minutes: 120,
      comparison: 'at_most',
      section: '3-403.11(D)',
      speaks_of: 'reheating by (A), (B) or (C): time between 41 °F and the target',
    },
    reheat_conventional: {
      target: {
        ...cited,
        id: `${edition.mark}-REHEAT-A`,
        value: pair.reheated,
        section: '3-403.11(A)',
        speaks_of: 'TCS food cooked and cooled on site, all parts, to be held hot',
      },
      held_s: 15,
      stand_s: null,
    },
    reheat_microwave: {
      target: {
        ...cited,
        id: `${edition.mark}-REHEAT-B`,
        value: pair.reheated,
        section: '3-403.11(B)',
        speaks_of: 'reheating in a microwave: all parts, rotated or stirred, covered, stood 2 min',
      },
      held_s: 0,
      stand_s: 120,
    },
    reheat_commercial: {
      target: {
        ...cited,
        id: `${edition.mark}-REHEAT-C`,
        value: pair.hot,
        section: '3-403.11(C)',
        speaks_of: 'first warming of ready-to-eat food from an inspected plant’s sealed package',
      },
      held_s: 0,
      stand_s: null,
    },
    reheat_roast: {
      section: '3-403.11(E)',
      why: 'unsliced portions by the chart and oven line of 3-401.11(B); the 2 h of (D) name (A) to (C) only',
    },
    reheat_immediate: {
      section: '3-403.10',
      why: 'food for immediate service to one order may be served at any temperature',
    },
  } satisfies Partial<Figures>;
}
