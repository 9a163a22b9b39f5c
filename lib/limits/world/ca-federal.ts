import type { TemperatureFigure } from '../figure.ts';
import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const law = published({
  prefix: 'CA-FED',
  edition: 'C.R.C. c. 870, current to 26 November 2024',
  checked: 'read',
  where: 'B.22.026 (poultry) on the federal law site; B.14.072 (meat) as a bulletin of the CFIA quotes it',
  force: 'law',
});
const inBoth = (figure: TemperatureFigure, degF: number): TemperatureFigure => ({
  ...figure,
  value: { degF, degC: figure.value.degC },
});
const section = 'Food and Drug Regulations B.14.072, B.22.026';

/** Canada, federal: meat and poultry that were barbecued, roasted or broiled and are on sale. */
export const caFederal: ProfileSource = {
  id: 'ca_federal',
  name: 'Canada, Food and Drug Regulations: barbecued meat and poultry on sale',
  place: 'Canada: federal',
  force: 'law',
  edition: 'C.R.C. c. 870, current to 26 November 2024',
  extends: null,
  notes: [
    'For take-away and packaged sale; whether it reaches a plate served in the restaurant is an open question, and the province’s rule is the one for that.',
    'The text takes the food or the air of the cabinet, each at 60 °C or above, or at 4.4 °C or below. Here only readings of the food are judged: cabinet air shows nothing of the food.',
    'The label has to say that the food is to be stored at these temperatures.',
    'A rewrite of the food standards of December 2024 may have moved or repealed it: look it up before you rely on it.',
  ],
  figures: {
    hot_hold: inBoth(
      law.degrees('HOT', 'at_or_above', 60, {
        section,
        speaks_of: 'meat and poultry barbecued, roasted or broiled, ready to eat and on sale, at all times',
      }),
      140,
    ),
    cold_hold: inBoth(
      law.degrees('COLD', 'at_or_below', 4.4, {
        section,
        speaks_of: 'the same food where it is kept cold instead',
      }),
      40,
    ),
  },
};
