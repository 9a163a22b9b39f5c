import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const law = published({
  prefix: 'SG',
  edition: 'S 674/2011, from 15 February 2012',
  checked: 'read',
  where: 'the regulations',
  force: 'law',
});
const section = 'Food Hygiene Regulations reg. 13A';
const zone = 'food of a licensed caterer: from 5 to 60 °C, both included, the four hours run';

/** Singapore, licensed caterers. */
export const sg: ProfileSource = {
  id: 'sg',
  name: 'Singapore, Food Hygiene Regulations, licensed caterers',
  place: 'Singapore',
  force: 'law',
  edition: 'S 674/2011, from 15 February 2012',
  extends: null,
  notes: [
    'For licensed caterers. Food cooked and served at once in a shop or restaurant needs no time stamp, says the agency (read).',
    'The text sets no temperature for holding: it counts the time from 5 to 60 °C since the food was first prepared, at most 4 h in all. A reading there is outside the safe sides, and the four hours are named beside it; the record of one hold does not show the sum.',
    'Date and time of preparation and the time by which it is to be eaten stand on the pack or a sign (reg. 13B).',
    'Sealed food that was packed before and is stored as its label says is exempt.',
    'Cooling: no figure was found. The food law is being replaced: look for a newer text.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'above', 60, { section, speaks_of: zone }),
    hot_hold_defences: [
      law.defence('HOT-4H', 'From 5 to 60 °C for no more than 4 h in all since it was first prepared', 240, {
        section,
        speaks_of: 'what the caterer has to show',
      }),
    ],
    cold_hold: law.degrees('COLD', 'below', 5, { section, speaks_of: zone }),
  },
};
