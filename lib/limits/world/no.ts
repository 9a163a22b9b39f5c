import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const law = published({
  prefix: 'NO',
  edition: 'food hygiene regulation, as quoted on the page',
  checked: 'read',
  where: 'page of the Norwegian Food Safety Authority that quotes § 13',
  force: 'law',
});
const trade = published({
  prefix: 'NO',
  edition: 'sector guide of the grocery trade, version of October 2022',
  checked: 'read',
  where: 'the sector guide',
  force: 'guide',
});

/** Norway. */
export const no: ProfileSource = {
  id: 'no',
  name: 'Norway, food hygiene regulation',
  place: 'Norway',
  force: 'law',
  edition: 'pages read, cooling changed 3 February 2020',
  extends: 'eu',
  notes: [
    'Cooling is advice and says "preferably": a miss is outside the advice, not against the law.',
    'Thermometers: the guide of the grocery trade asks for a check at least every 2 years with proof, and takes infrared for a first look only, never for the record.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'at_or_above', 60, {
      section: 'food hygiene regulation § 13',
      speaks_of: 'food heated enough and then held hot',
    }),
    hot_hold_defences: [
      law.defence('HOT-EXC', 'In transport, or served to the final consumer, without risk to health', null, {
        section: 'food hygiene regulation § 13',
        speaks_of: 'an exception in the text; the business has to show it',
      }),
    ],
    cold_hold: law.degrees('COLD', 'at_or_below', 4, {
      section: 'food hygiene regulation §§ 11–13',
      speaks_of: 'food that spoils, as the main rule',
    }),
    cooling: [
      law.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 10],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        {
          section: 'page on cooling',
          edition: 'page changed 3 February 2020',
          where: 'the authority’s page',
          force: 'advice',
          speaks_of: 'cooked food, preferably within two hours',
        },
      ),
    ],
    probe_celsius: trade.accuracy('PROBE', 1, {
      section: 'sector guide, thermometers',
      speaks_of: 'food thermometers of the grocery trade',
    }),
  },
};
