import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const din = published({
  prefix: 'DE-CC',
  edition: 'DIN 10536:2016',
  checked: 'second_hand',
  where: 'a trade magazine of 2017; the edition of March 2023 was not seen',
  force: 'standard',
});

/** Germany, a kitchen that cooks, chills and serves later. */
export const deCookChill: ProfileSource = {
  id: 'de_cook_chill',
  name: 'Germany, cook-chill by DIN 10536',
  place: 'Germany',
  force: 'standard',
  edition: 'DIN 10536:2016, replaced by DIN 10536:2023-03',
  extends: 'de',
  notes: [
    'Only for cook-chill. Up to 120 minutes are named for exceptional cases; the 90 are judged.',
    'The edition of 2023 was not seen and may differ.',
  ],
  figures: {
    cooling: [
      din.stage(
        'COOL',
        'total',
        { from: ['above', 65], to: ['below', 3], within: ['at_most', 90], counted: 'from_start' },
        { section: 'DIN 10536, cooling', speaks_of: 'the core of cook-chill food' },
      ),
    ],
    reheat_conventional: route(
      din.degrees('REHEAT', 'above', 72, {
        section: 'DIN 10536, reheating',
        speaks_of: 'the core of cook-chill food, for at least 2 minutes',
      }),
      120,
    ),
  },
};
