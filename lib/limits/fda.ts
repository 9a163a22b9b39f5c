import { cooking } from './fda-cook.ts';
import { cooling } from './fda-cooling.ts';
import type { FoodCodeEdition } from './fda-edition.ts';
import { holding } from './fda-hold.ts';
import { reheating } from './fda-reheat.ts';
import { roasting } from './fda-roast.ts';
import { thermometers } from './fda-thermometers.ts';
import { timeRules } from './fda-time.ts';
import type { ProfileSource } from './profile.ts';

/**
 * The FDA Food Code in one edition: a model code, law only where a state or city adopts it. Comparators as
 * published: "at or above", "or less", "within 2 hours" (exactly two hours keeps the rule).
 */
export function foodCode(edition: FoodCodeEdition) {
  return {
    id: edition.id,
    name: edition.name,
    place: 'USA',
    force: 'model',
    edition: edition.name,
    extends: null,
    notes: [...edition.notes],
    figures: {
      ...holding(edition),
      ...cooling(edition),
      ...reheating(edition),
      ...roasting(edition),
      ...cooking(edition),
      ...timeRules(edition),
      ...thermometers(edition),
    },
  } satisfies ProfileSource;
}
