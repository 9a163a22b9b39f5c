import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const rule = published({
  prefix: 'BR',
  edition: 'RDC 216/2004',
  checked: 'second_hand',
  where: 'exam texts and checklists that quote the items',
  force: 'law',
});

/** Brazil: above 60 °C, and for no more than six hours. */
export const br: ProfileSource = {
  id: 'br',
  name: 'Brazil, ANVISA RDC 216/2004',
  place: 'Brazil',
  force: 'law',
  edition: 'RDC 216/2004',
  extends: null,
  notes: [
    'Both conditions bind: above 60 °C, and at most 6 h. An overnight hold cannot be kept under it, however hot the food is.',
    'Cooking and reheating, and the cold after cooling: their figures were not read and are not shipped.',
    'States may be stricter.',
  ],
  figures: {
    hot_hold: rule.degrees('HOT', 'above', 60, {
      section: 'RDC 216/2004 item 4.8.15',
      speaks_of: 'cooked food held hot',
    }),
    hot_hold_at_most: rule.minutes('HOT-MOST', 'at_most', 360, {
      section: 'RDC 216/2004 item 4.8.15',
      speaks_of: 'the whole time that cooked food is held hot',
    }),
    cooling: [
      rule.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 10],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        { section: 'RDC 216/2004, cooling', speaks_of: 'cooked food that is cooled' },
      ),
    ],
    retention: rule.retention('KEEP', '30 days from preparation', {
      section: 'RDC 216/2004 item 4.11.3',
      speaks_of: 'records of the procedures',
    }),
  },
};
