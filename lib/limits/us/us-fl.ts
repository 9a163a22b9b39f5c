import { fda2017 } from '../fda-2017.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const fl = code({
  prefix: 'FL',
  edition: 'Florida, restaurants, 2017 text',
  checked: 'read',
  where: 'read in violation texts that quote it, on a public site of inspection results',
});
const { figures } = fda2017;
const ground = fl.restated(figures.cook.ground, 'COOK-2', { section: '3-401.11(A)(2)' });

export const usFl: ProfileSource = {
  id: 'us_fl',
  name: 'Florida',
  place: 'USA, Florida',
  force: 'law',
  edition: 'Florida, restaurants, 2017 text',
  extends: 'fda_2017',
  notes: ['What is not named here is FDA’s of 2017.'],
  figures: {
    hot_hold: fl.restated(figures.hot_hold, 'HOLD-HOT', {
      section: '3-501.16(A)(1)',
      checked: 'second_hand',
      where: 'summaries of administrative hearings against Florida restaurants, 2008 and 2010',
    }),
    reheat_conventional: fl.route(figures.reheat_conventional, 'REHEAT', { section: '3-403.11(A)' }),
    reheat_commercial: fl.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', { section: '3-403.11(C)' }),
    cook: {
      ...figures.cook,
      ground,
      injected_or_tenderized: ground,
      sausage_raw: ground,
      egg: ground,
    },
  },
};
