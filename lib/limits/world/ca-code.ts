import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const same =
  'the clause was not seen; it is taken to be the figure of New Brunswick’s regulation, which was read and follows the Code';
const code = published({
  prefix: 'CA-CODE',
  edition: 'Food Retail and Food Services Code',
  checked: 'second_hand',
  where: same,
  force: 'model',
});
const section = 'Food Retail and Food Services Code';
const training = 'a training page of Nunavut';

/** Canada, the model code: binding only where a province adopts it. */
export const caCode: ProfileSource = {
  id: 'ca_code',
  name: 'Canada, Food Retail and Food Services Code',
  place: 'Canada: model code',
  force: 'model',
  edition: 'as restated; Alberta published an edition in October 2003',
  extends: null,
  notes: [
    'A model text: it binds only where a province adopts it.',
    'The clauses themselves were not seen. Cooling was read on a training page; the other figures are taken from New Brunswick’s regulation, which agrees with it.',
  ],
  figures: {
    hot_hold: code.degrees('HOT', 'at_or_above', 60, { section, speaks_of: 'hazardous food held hot' }),
    cold_hold: code.degrees('COLD', 'at_or_below', 4, { section, speaks_of: 'hazardous food held cold' }),
    cooling: [
      code.stage(
        'COOL-1',
        'stage_1',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 20],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        { section, where: training, speaks_of: 'cooked food that is cooled' },
      ),
      code.stage(
        'COOL-2',
        'stage_2',
        {
          from: ['at_or_above', 20],
          to: ['at_or_below', 4],
          within: ['at_most', 240],
          counted: 'from_previous',
        },
        { section, where: training, speaks_of: 'cooked food that is cooled, from 20 °C on' },
      ),
    ],
    reheat_from: code.degrees('REHEAT-FROM', 'at_or_below', 4, {
      section,
      speaks_of: 'the figure of cold holding, from which the time counts',
    }),
    reheat_within: code.minutes('REHEAT-TIME', 'at_most', 120, {
      section,
      speaks_of: 'food that is heated again for hot holding',
    }),
    reheat_conventional: route(
      code.degrees('REHEAT', 'at_or_above', 74, { section, speaks_of: 'food heated again, for 15 seconds' }),
      15,
    ),
  },
};
