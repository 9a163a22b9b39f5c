import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const law = published({
  prefix: 'ZA',
  edition: 'R638 of 22 June 2018',
  checked: 'read',
  where: 'the regulations',
  force: 'law',
});
const section = 'R638 reg. 8(4), Annexure E';

/** South Africa. */
export const za: ProfileSource = {
  id: 'za',
  name: 'South Africa, Regulations R638 of 2018',
  place: 'South Africa',
  force: 'law',
  edition: 'R638 of 22 June 2018',
  extends: null,
  notes: [
    'Core and surface each have a figure: the food may not be sold if the core is below 60 °C or the surface below 58.',
    'Four hours: food sold straight to a consumer, or eaten on the premises, within 4 h of being prepared is outside the rule. When meat counts as prepared is not said: take the end of smoking.',
    'Time to heat up or cool down in good practice is not counted by the text; how long that is it does not say.',
    'Cold: 4 °C for raw fish, offal, poultry and milk, 5 °C for other food. The record does not say which it is, so 4 is judged.',
    'Cooling and reheating: no figure. How long records are kept: no figure was found.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'at_or_above', 60, {
      section,
      speaks_of: 'the core of food that spoils and is neither frozen nor chilled',
    }),
    hot_hold_surface: law.degrees('HOT-SURFACE', 'at_or_above', 58, {
      section,
      speaks_of: 'the surface of the same food: at most 2 °C lower',
    }),
    hot_hold_defences: [
      law.defence(
        'HOT-4H',
        'Sold straight to a consumer or eaten on the premises within 4 h of being prepared',
        240,
        {
          section,
          speaks_of: 'an exception in the text; the business has to show it',
        },
      ),
    ],
    cold_hold: law.degrees('COLD', 'at_or_below', 4, {
      section,
      speaks_of:
        'raw fish, offal, poultry and milk, and food of which nobody knows what it is; other food 5 °C',
    }),
  },
};
