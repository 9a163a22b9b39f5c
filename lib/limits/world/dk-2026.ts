import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const news = published({
  prefix: 'DK-2026',
  edition: 'guide of January 2026, as reported',
  checked: 'second_hand',
  where: 'trade news of 27 January 2026; the guide was not read, and its first day is not known',
  force: 'advice',
  from: '2026-01-27',
});

/** Denmark as the trade reports the guide of January 2026. */
export const dk2026: ProfileSource = {
  id: 'dk_2026',
  name: 'Denmark, guide of January 2026 as reported',
  place: 'Denmark',
  force: 'advice',
  edition: 'January 2026, as reported',
  extends: 'dk',
  notes: [
    'Reported, not read: 56 °C is lower than most places ask. Until somebody has read the new guide, go by the figure in your own plan.',
    'The report says that a hold has no limit of time, and that food heated to 75 °C once need not be cooled if it is held so.',
    'From the day of the report; the first day of the guide itself is not known.',
  ],
  figures: {
    hot_hold: news.degrees('HOT', 'at_or_above', 56, {
      section: 'guide of January 2026',
      speaks_of: 'food held hot all the time',
    }),
    cooling: [
      news.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 56],
          to: ['at_or_below', 10],
          within: ['at_most', 240],
          counted: 'from_start',
        },
        { section: 'guide of January 2026', speaks_of: 'cooked food that is cooled' },
      ),
    ],
  },
};
