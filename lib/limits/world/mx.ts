import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const norm = published({
  prefix: 'MX',
  edition: 'NOM-251-SSA1-2009, gazette of 1 March 2010',
  checked: 'second_hand',
  where: 'two summaries for study that agree, save for one misprint',
  force: 'law',
});
const section = 'NOM-251-SSA1-2009, chapter 7.3';
const whole = norm.chart('COOK-63', [[63, 0]], { section, speaks_of: 'fish and whole beef' });
const middle = norm.chart('COOK-68', [[68, 0]], {
  section,
  speaks_of:
    'pork in pieces, ground beef, pork and fish, injected meat, eggs for a buffet; also the intact roast, for its class does not say which animal it is of',
});
const most = norm.chart('COOK-74', [[74, 0]], {
  section,
  speaks_of: 'stuffed food, sausages, poultry, and food of which nobody knows what it is',
});

/** Mexico. */
export const mx: ProfileSource = {
  id: 'mx',
  name: 'Mexico, NOM-251-SSA1-2009',
  place: 'Mexico',
  force: 'law',
  edition: 'NOM-251-SSA1-2009, gazette of 1 March 2010',
  extends: null,
  notes: [
    'Above 60 °C: exactly 60 does not keep it.',
    'Seconds are often added to the cooking figures; they were not read, so none are asked.',
    'Eggs for immediate service need 63 °C; the record does not say which they are, so the 68 of a buffet is judged.',
    'Cooling and the length of a hot hold: no figure was found. How long records are kept: none found.',
  ],
  figures: {
    hot_hold: norm.degrees('HOT', 'above', 60, { section, speaks_of: 'food held hot' }),
    cold_hold: norm.degrees('COLD', 'at_or_below', 7, { section, speaks_of: 'food held cold' }),
    reheat_conventional: route(
      norm.degrees('REHEAT', 'at_or_above', 74, { section, speaks_of: 'food that is heated again' }),
      0,
    ),
    cook: {
      beef_whole: whole,
      fish: whole,
      pork_whole: middle,
      ground: middle,
      injected_or_tenderized: middle,
      intact_roast: middle,
      egg: middle,
      sausage_raw: most,
      poultry: most,
      unknown: most,
    },
  },
};
