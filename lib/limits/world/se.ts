import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const agency = published({
  prefix: 'SE',
  edition: 'answers and news of the National Food Agency',
  checked: 'read',
  where: 'the agency’s own pages',
  force: 'advice',
});

/** Sweden: guide values. */
export const se: ProfileSource = {
  id: 'se',
  name: 'Sweden, guide values of the National Food Agency',
  place: 'Sweden',
  force: 'advice',
  edition: 'cooling since 30 November 2018',
  extends: 'eu',
  notes: [
    'No figure in law, and no limit on how long food is held hot: the agency says so.',
    '60 °C is the guide value for hot holding; the agency sees no risk to health at 55 or more. 60 is judged.',
    'Cooling: before 30 November 2018 it was 8 °C within 4 h. Longer than 6 h needs an assessment of the risk.',
    'Some municipalities print a limit of 2 h on hot holding; the agency does not.',
    'How long records are kept: no figure was found.',
  ],
  figures: {
    hot_hold: agency.degrees('HOT', 'at_or_above', 60, {
      section: 'answer on hot holding',
      speaks_of: 'food held hot, as a suitable guide value',
    }),
    cooling: [
      agency.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 8],
          within: ['at_most', 360],
          counted: 'from_start',
        },
        { section: 'news of 30 November 2018', speaks_of: 'cooked food that is cooled, as a guide value' },
      ),
    ],
    reheat_conventional: route(
      agency.degrees('REHEAT', 'at_or_above', 70, {
        section: 'advice on reheating',
        checked: 'second_hand',
        where: 'pages of municipalities',
        speaks_of: 'food that is heated again',
      }),
      0,
    ),
  },
};
