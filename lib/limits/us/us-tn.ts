import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const tn = code({
  prefix: 'TN',
  edition: 'Tenn. Rules 0080-04-09, 2024',
  checked: 'read',
  where: 'read in the Justia copy of Tenn. Rules 0080-04-09-.03, 2024',
});
const { figures } = fda2013;

export const usTn: ProfileSource = {
  id: 'us_tn',
  name: 'Tennessee',
  place: 'USA, Tennessee',
  force: 'law',
  edition: 'Tenn. Rules 0080-04-09, 2024',
  extends: 'fda_2013',
  notes: [
    'Read for stores. Restaurants have their own chapter 1200-23-01, which was not read. Which edition it follows is not known.',
  ],
  figures: {
    cooling: tn.stages(figures.cooling, { section: 'Tenn. Rules 0080-04-09-.03' }),
  },
};
