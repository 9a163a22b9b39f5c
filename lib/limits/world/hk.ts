import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const centre = published({
  prefix: 'HK',
  edition: 'pages of 2023 to 2025',
  checked: 'read',
  where: 'pages of the Centre for Food Safety and chapter 4 of the Food Hygiene Code',
  force: 'advice',
});
const cook = centre.chart('COOK', [[75, 30]], {
  section: 'Centre for Food Safety, cooking',
  speaks_of: 'the core; the 30 seconds stand in notices of 2024',
});

/** Hong Kong. */
export const hk: ProfileSource = {
  id: 'hk',
  name: 'Hong Kong, Centre for Food Safety and Food Hygiene Code',
  place: 'Hong Kong',
  force: 'advice',
  edition: 'pages of 2023 to 2025',
  extends: null,
  notes: [
    'The Code says at or above 60 °C, the Centre’s pages say over 60. The Code is judged; a reading at 60 is said to be close to the limit.',
    'Food is brought into hot or cold holding within 2 h. A rule of 2 h and 4 h for food in between exists and was read in part only; neither is judged.',
    'How long records are kept: no figure was found.',
  ],
  figures: {
    hot_hold: centre.degrees('HOT', 'at_or_above', 60, {
      section: 'Food Hygiene Code ch. 4',
      speaks_of: 'food held hot',
    }),
    cold_hold: centre.degrees('COLD', 'at_or_below', 4, {
      section: 'Food Hygiene Code ch. 4',
      speaks_of: 'food held cold',
    }),
    cooling: [
      centre.stage(
        'COOL-1',
        'stage_1',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 20],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        { section: 'Centre for Food Safety, cooling', speaks_of: 'cooked food that is cooled' },
      ),
      centre.stage(
        'COOL-2',
        'stage_2',
        {
          from: ['at_or_above', 20],
          to: ['at_or_below', 4],
          within: ['at_most', 240],
          counted: 'from_previous',
        },
        {
          section: 'Centre for Food Safety, cooling',
          speaks_of: 'the same food, in a chiller, the next 4 h',
        },
      ),
    ],
    reheat_conventional: route(
      centre.degrees('REHEAT', 'at_or_above', 75, {
        section: 'Centre for Food Safety, reheating',
        speaks_of: 'the core, or until it boils',
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
      egg: cook,
      unknown: cook,
    },
    probe_celsius: centre.accuracy('PROBE', 1, {
      section: 'Centre for Food Safety, thermometers',
      speaks_of: 'a check in ice water from −1 to +1 °C, in boiling water from 99 to 101 °C',
    }),
  },
};
