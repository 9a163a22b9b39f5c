import { type FoodCodeEdition, source } from './fda-edition.ts';
import { pair } from './fda-values.ts';
import type { TemperatureFigure } from './figure.ts';
import type { Figures } from './profile.ts';

/** 3-501.16: the food, not the air of the cabinet; no edition gives a grace period below the figure. */
export function holding(edition: FoodCodeEdition) {
  const cited = { ...source(edition, 'hold'), first: 'degF' } as const;
  const cold: TemperatureFigure = {
    ...cited,
    id: `${edition.mark}-HOLD-COLD`,
    value: pair.cold,
    comparison: 'at_or_below',
    section: '3-501.16(A)(2)',
    speaks_of: 'every TCS food held cold',
  };
  return {
    hot_hold: {
      ...cited,
      id: `${edition.mark}-HOLD-HOT`,
      value: pair.hot,
      comparison: 'at_or_above',
      section: '3-501.16(A)(1)',
      speaks_of: 'every TCS food held hot',
    },
    hot_hold_roast: {
      ...cited,
      id: `${edition.mark}-HOLD-ROAST`,
      value: pair.roast,
      comparison: 'at_or_above',
      section: '3-501.16(A)(1)',
      speaks_of: 'roasts cooked by the chart of 3-401.11(B) or reheated as 3-403.11(E) says',
      disputed: 'whether the allowance needs the oven line beside the chart: taken as both',
    },
    cold_hold: cold,
  } satisfies Partial<Figures>;
}
