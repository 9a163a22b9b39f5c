import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const dc = code({
  prefix: 'DC',
  edition: '25-A DCMR, 2024',
  checked: 'read',
  where: 'read in the Casetext copy of 25-A DCMR 906, 2024',
});
const { figures } = fda2013;

export const usDc: ProfileSource = {
  id: 'us_dc',
  name: 'District of Columbia',
  place: 'USA, District of Columbia',
  force: 'law',
  edition: '25-A DCMR, 2024',
  extends: 'fda_2013',
  notes: ['A text like that of 2009; what was not read is FDA’s of 2013.'],
  figures: {
    reheat_within: dc.restated(figures.reheat_within, 'REHEAT-TIME', { section: '25-A DCMR 906' }),
    reheat_conventional: dc.route(figures.reheat_conventional, 'REHEAT', { section: '25-A DCMR 906' }),
    reheat_microwave: dc.route(figures.reheat_microwave, 'REHEAT-MICRO', { section: '25-A DCMR 906' }),
    reheat_commercial: dc.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', { section: '25-A DCMR 906' }),
  },
};
