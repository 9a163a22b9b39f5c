import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const law = published({
  prefix: 'FI',
  edition: 'decree 318/2021',
  checked: 'read',
  where: 'page of the Finnish Food Authority',
  force: 'law',
});
const note = published({
  prefix: 'FI',
  edition: 'food control note 2/2023 of the City of Oulu',
  checked: 'second_hand',
  where: 'the note of the City of Oulu',
  force: 'advice',
});
const section = 'food control note 2/2023';
const cook = note.chart('COOK', [[70, 0]], { section, speaks_of: 'food that is cooked, save poultry' });
const poultry = note.chart('COOK-POULTRY', [[75, 0]], {
  section,
  speaks_of: 'poultry, and food of which nobody knows what it is',
});

/** Finland. */
export const fi: ProfileSource = {
  id: 'fi',
  name: 'Finland, decree 318/2021',
  place: 'Finland',
  force: 'law',
  edition: 'decree 318/2021',
  extends: 'eu',
  notes: [
    'Hot holding: the figure was read on the authority’s page, which names the decree.',
    'Cooling: whether its figure is law or advice is not clear; it is printed as advice. It counts from the end of cooking.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'at_or_above', 60, {
      section: 'decree 318/2021',
      speaks_of: 'food sold or served hot that is not chilled, all through',
    }),
    cooling: [
      note.stage(
        'COOL',
        'total',
        { from: null, to: ['at_or_below', 6], within: ['at_most', 240], counted: 'from_start' },
        { section, speaks_of: 'cooked food, cooling begun right after cooking' },
      ),
    ],
    reheat_conventional: route(
      note.degrees('REHEAT', 'at_or_above', 70, { section, speaks_of: 'food that is heated again' }),
      0,
    ),
    cook: {
      intact_roast: cook,
      injected_or_tenderized: cook,
      ground: cook,
      sausage_raw: cook,
      pork_whole: cook,
      beef_whole: cook,
      fish: cook,
      poultry,
      unknown: poultry,
    },
  },
};
