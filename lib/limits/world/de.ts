import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const din = published({
  prefix: 'DE',
  edition: 'DIN 10506:2023-03',
  checked: 'read',
  where: 'page of the consumer council of DIN, 29 March 2023',
  force: 'standard',
});
const school = published({
  prefix: 'DE',
  edition: 'not named',
  checked: 'second_hand',
  where: 'a page on school meals',
});

/** Germany: standards; no statute sets a hot figure. */
export const de: ProfileSource = {
  id: 'de',
  name: 'Germany, DIN 10506 and DIN 10508',
  place: 'Germany',
  force: 'standard',
  edition: 'DIN 10506:2023-03',
  extends: 'eu',
  notes: [
    'A standard is voluntary; in a dispute it counts as the state of good practice.',
    'Many papers still print 65 °C. The food has to be at 60 or above; 65 is what the equipment is set to, so that 60 holds everywhere.',
    'DIN 10508, edition of 2022, second hand: 60 °C when it is served.',
    'The three hours of hot holding stand in older wording of DIN 10508, edition not clear; egg dishes 2 h.',
    'Cooling 65 to 10 °C in 2 h is advice for ordinary kitchens. A cook-chill kitchen has a profile of its own.',
  ],
  figures: {
    hot_hold: din.degrees('HOT', 'at_or_above', 60, {
      section: 'DIN 10506:2023-03, hot holding',
      speaks_of: 'every place of the food, the whole time that it is held',
    }),
    hot_hold_at_most: school.minutes('HOT-MOST', 'at_most', 180, {
      section: 'DIN 10508, older wording',
      edition: 'DIN 10508, edition not clear',
      force: 'standard',
      speaks_of: 'all the time of a hot hold, from the end of cooking, as a general rule',
      disputed: 'older wording, edition not clear, and said of the general case only',
    }),
    cooling: [
      school.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 65],
          to: ['at_or_below', 10],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        {
          section: 'advice for school kitchens',
          force: 'advice',
          speaks_of: 'the core of food cooled in an ordinary kitchen',
        },
      ),
    ],
  },
};
