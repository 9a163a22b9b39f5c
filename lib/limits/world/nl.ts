import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const code = published({
  prefix: 'NL',
  edition: 'hygiene code for the horeca, in force since 1 April 2016',
  checked: 'second_hand',
  where: 'restatements; the code itself is sold and was not read',
  force: 'guide',
});
const section = 'hygiene code for the horeca';
const cook = code.chart('COOK', [[75, 0]], { section, speaks_of: 'the core of raw products' });

/** The Netherlands: an approved guide. */
export const nl: ProfileSource = {
  id: 'nl',
  name: 'Netherlands, hygiene code for the horeca',
  place: 'Netherlands',
  force: 'guide',
  edition: 'in force since 1 April 2016',
  extends: 'eu',
  notes: [
    'Where the five hours of cooling start is not clear from what was read: the end of heating, the stricter start, is taken.',
    'How long records are kept: no figure was found.',
  ],
  figures: {
    hot_hold: code.degrees('HOT', 'at_or_above', 60, { section, speaks_of: 'food held or served hot' }),
    hot_hold_defences: [
      code.defence('HOT-2H', 'Displayed without control under a two-hour rule that is well kept', 120, {
        section,
        speaks_of: 'what the business has to show',
      }),
    ],
    cooling: [
      code.stage(
        'COOL',
        'total',
        { from: null, to: ['at_or_below', 7], within: ['at_most', 300], counted: 'from_start' },
        {
          section,
          where: 'a summary of 2016; the code itself was not read',
          speaks_of: 'cooked food that is cooled',
        },
      ),
    ],
    reheat_from: code.degrees('REHEAT-FROM', 'at_or_below', 7, {
      section,
      where: 'the figure of cooling stands for the chilled product; the code itself was not read',
      speaks_of: 'a product cooked before and chilled',
    }),
    reheat_within: code.minutes('REHEAT-TIME', 'at_most', 60, {
      section,
      where: 'a summary of the edition of 2004',
      speaks_of: 'a product cooked before and chilled',
    }),
    reheat_conventional: route(
      code.degrees('REHEAT', 'above', 60, {
        section,
        where: 'a summary of the edition of 2004',
        speaks_of: 'a product cooked before and chilled',
      }),
      0,
    ),
    cook: {
      intact_roast: cook,
      injected_or_tenderized: cook,
      ground: cook,
      sausage_raw: cook,
      poultry: cook,
      pork_whole: cook,
      beef_whole: cook,
      fish: cook,
      unknown: cook,
    },
  },
};
