import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const code = published({
  prefix: 'AU',
  edition: 'Standard 3.2.2',
  checked: 'read',
  where: 'guidance of the government of the ACT that goes clause by clause',
  force: 'law',
});
const pages = 'figure and comparator on pages of NSW and FSANZ; the number of the clause is from memory';
const mustShow = 'what the business has to show';

/** Australia. It does not apply in New Zealand. */
export const au322: ProfileSource = {
  id: 'au_322',
  name: 'Australia, Food Standards Code, Standard 3.2.2',
  place: 'Australia',
  force: 'law',
  edition: 'Standard 3.2.2; 3.2.2A in force since 8 December 2023',
  extends: null,
  notes: [
    'The standard has no cooking figure and no 75 °C; 75 is habit. Reheating is to 60 °C or above, rapidly, and only for food that will be held hot. "Within 2 h" is advice of a council and is not judged.',
    '2 h and 4 h: all the time between 5 and 60 °C over a food’s whole life is added up and written down: under 2 h use or chill again, 2 to under 4 h use now, 4 h or longer throw away. NSW is stricter at exactly 4 h than others. The record of one hold does not show a whole life, so the sum is not judged; it is named beside a broken hold.',
    'States differ on whether cooling time counts in that sum. It never mends a failed cooling.',
    'Another way of cooling or holding counts where the business shows it safe. Where a process never changes, regular checks are enough instead of every batch.',
    'Standard 3.2.2A: a business that makes and serves ready-to-eat food unpackaged needs a trained supervisor, trained handlers, and records or another way to show its controls.',
    'Infrared measures surfaces only, and a cabinet’s gauge shows the cabinet.',
  ],
  figures: {
    hot_hold: code.degrees('HOT', 'at_or_above', 60, {
      section: 'Standard 3.2.2 cl. 8',
      where: pages,
      speaks_of: 'hazardous food received, stored, displayed or transported hot (cl. 5, 6, 8, 10)',
    }),
    hot_hold_defences: [
      code.defence('HOT-ALT', 'Another temperature, shown to do no harm for the time it is kept', null, {
        section: 'Standard 3.2.2 cl. 8',
        where: 'pages of FSANZ and NSW',
        speaks_of: mustShow,
      }),
      code.defence('HOT-4H', 'Under 4 h between 5 and 60 °C in its whole life, with the times written', 240, {
        section: '2-hour/4-hour rule',
        edition: 'NSW Food Authority, July 2021, reviewed 2025',
        where: 'the page of the NSW Food Authority',
        force: 'advice',
        speaks_of: `${mustShow}: ready-to-eat food`,
        disputed: 'NSW throws away at exactly 4 h, other places at more than 4 h; whether cooling counts',
      }),
    ],
    cold_hold: code.degrees('COLD', 'at_or_below', 5, {
      section: 'Standard 3.2.2 cl. 8',
      where: pages,
      speaks_of: 'hazardous food received, stored, displayed or transported cold (cl. 5, 6, 8, 10)',
    }),
    cooling: [
      code.stage(
        'COOL-1',
        'stage_1',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 21],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        { section: 'Standard 3.2.2 cl. 7(3)', speaks_of: 'the slowest place of cooked food that is cooled' },
      ),
      code.stage(
        'COOL-2',
        'stage_2',
        {
          from: ['at_or_above', 21],
          to: ['at_or_below', 5],
          within: ['at_most', 240],
          counted: 'from_previous',
        },
        { section: 'Standard 3.2.2 cl. 7(3)', speaks_of: 'the slowest place, a further four hours' },
      ),
    ],
    reheat_conventional: route(
      code.degrees('REHEAT', 'at_or_above', 60, {
        section: 'Standard 3.2.2 cl. 7(4)',
        speaks_of: 'food heated again to be held hot, rapidly',
      }),
      0,
    ),
    retention: code.retention('KEEP', '3 months, longer where a state says so', {
      section: 'Standard 3.2.2A',
      edition: 'Standard 3.2.2A, in force since 8 December 2023',
      checked: 'second_hand',
      where: 'a council in NSW',
      speaks_of: 'records made on each day on which the food is handled',
    }),
    probe_celsius: code.accuracy('PROBE', 1, {
      section: 'Standard 3.2.2 cl. 22',
      where: 'pages of FSANZ and the ACT',
      speaks_of: 'a probe within reach that measures the food',
    }),
  },
};
