import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const law = published({
  prefix: 'CA-ON',
  edition: 'O. Reg. 493/17',
  checked: 'second_hand',
  where: 'quotations; the same rule was read in s. 33 of Reg. 562, which went before',
  force: 'law',
});
const ministry = published({
  prefix: 'CA-ON',
  edition: 'reference document of the ministry, 2019',
  checked: 'second_hand',
  where: 'restatements of the ministry’s document; the regulation says nothing of it',
  force: 'advice',
});
const speaksOf = 'the inside of hazardous food in distribution, storage, transport, display and sale';

/** Ontario. */
export const caOn: ProfileSource = {
  id: 'ca_on',
  name: 'Ontario, Regulation 493/17',
  place: 'Canada: Ontario',
  force: 'law',
  edition: 'O. Reg. 493/17',
  extends: null,
  notes: [
    'Which clock rules cooling is an open question: the ministry’s legs take up to 6 h, the regulation allows 2 h outside the limits. Cooling by the two legs is accepted practice; anything slower has no cover.',
    'Reheating: the regulation says nothing. A table of the ministry goes by food (74 °C poultry and mixtures, 71 °C pork and ground meat, 70 °C fish; second hand); it is not judged.',
    'Smoking may make a business a maker of manufactured meat products, which needs written procedures approved by a health officer or inspector (s. 34, second hand). Ask the inspector.',
    'Hot-holding equipment needs an accurate thermometer that shows its temperature (read on a health unit’s page); no figure.',
    'Records of temperatures: no period was found. Purchases: 1 year.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'at_or_above', 60, {
      section: 'O. Reg. 493/17 s. 27(1)',
      speaks_of: speaksOf,
    }),
    hot_hold_defences: [
      law.defence('HOT-2H', 'Out only while it is prepared, processed or made, for not more than 2 h', 120, {
        section: 'O. Reg. 493/17 s. 27(2)(a)',
        speaks_of: 'an exception in the text; the business has to show it',
      }),
    ],
    cold_hold: law.degrees('COLD', 'at_or_below', 4, {
      section: 'O. Reg. 493/17 s. 27(1)',
      speaks_of: speaksOf,
    }),
    cooling: [
      ministry.stage(
        'COOL-1',
        'stage_1',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 20],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        { section: 'ministry’s reference document 2019', speaks_of: 'cooked food that is cooled' },
      ),
      ministry.stage(
        'COOL-2',
        'stage_2',
        {
          from: ['at_or_above', 20],
          to: ['at_or_below', 4],
          within: ['at_most', 240],
          counted: 'from_previous',
        },
        {
          section: 'ministry’s reference document 2019',
          speaks_of: 'cooked food that is cooled, from 20 °C on',
        },
      ),
    ],
  },
};
