import { type FoodCodeEdition, source } from './fda-edition.ts';
import type { Figures } from './profile.ts';

/** 4-203.11. No edition gives an interval for checking a thermometer. */
export function thermometers(edition: FoodCodeEdition) {
  const seen = source(edition, 'thermometers');
  return {
    probe_fahrenheit: {
      ...seen,
      id: `${edition.mark}-TMD-FOOD-F`,
      value: 2,
      unit: 'degF',
      section: '4-203.11(B)',
      speaks_of: 'food thermometers scaled in Fahrenheit only, in their range of use',
    },
    probe_celsius: {
      ...seen,
      id: `${edition.mark}-TMD-FOOD-C`,
      value: 1,
      unit: 'degC',
      section: '4-203.11(A)',
      speaks_of: 'food thermometers scaled in Celsius, or in both, in their range of use',
    },
  } satisfies Partial<Figures>;
}
