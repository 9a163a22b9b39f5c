import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const manual = published({
  prefix: 'JP',
  edition: 'notice Eishoku 85 of 24 March 1997, last revised 16 June 2017',
  checked: 'second_hand',
  where: 'an exam site that quotes the manual; the scope was read in the manual’s own words',
  force: 'advice',
});
const section = 'manual for large-scale cooking facilities';
const cook = manual.chart('COOK', [[75, 60]], {
  section,
  speaks_of: 'the core, for a minute; bivalves and the like 85 to 90 °C for 90 s',
});

/** Japan, kitchens of 300 meals of one menu at a time or 750 a day. */
export const jp: ProfileSource = {
  id: 'jp',
  name: 'Japan, manual for large-scale cooking facilities',
  place: 'Japan',
  force: 'advice',
  edition: 'last revised 16 June 2017',
  extends: null,
  notes: [
    'For kitchens of 300 or more meals of one menu at a time, or 750 a day. Smaller ones follow booklets of their sector, which were not seen.',
    'Cooling: care is to be taken to bring the core to about 20 °C within 30 min, or to about 10 °C within 60 min. Either will do, and how near "about" is stands nowhere: cooling is not judged, your plan decides.',
    'Food served hot that waits 30 min or more goes promptly into a warm container, and the time at which it went in is written down. It should be eaten within 2 h of cooking where that can be done.',
    'Kept or delivered at 10 °C or below, or at 65 or above.',
    'How long records are kept was not read.',
  ],
  figures: {
    hot_hold: manual.degrees('HOT', 'at_or_above', 65, { section, speaks_of: 'food kept or delivered hot' }),
    cold_hold: manual.degrees('COLD', 'at_or_below', 10, {
      section,
      speaks_of: 'food kept or delivered cold',
    }),
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
  },
};
