import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const wi = code({
  prefix: 'WI',
  edition: 'ATCP 75 appendix, 2024',
  checked: 'read',
  where: 'read in the Casetext copy of ATCP 75 appendix, 2024',
});
const { figures } = fda2013;

export const usWi: ProfileSource = {
  id: 'us_wi',
  name: 'Wisconsin',
  place: 'USA, Wisconsin',
  force: 'law',
  edition: 'ATCP 75 appendix, 2024',
  extends: 'fda_2013',
  notes: [],
  figures: {
    cooling: wi.stages(figures.cooling, { section: 'ATCP 75 appendix 3-501.14' }),
    reheat_within: wi.restated(figures.reheat_within, 'REHEAT-TIME', {
      section: 'ATCP 75 appendix 3-403.11',
    }),
    reheat_conventional: wi.route(figures.reheat_conventional, 'REHEAT', {
      section: 'ATCP 75 appendix 3-403.11',
    }),
    reheat_microwave: wi.route(figures.reheat_microwave, 'REHEAT-MICRO', {
      section: 'ATCP 75 appendix 3-403.11',
    }),
    reheat_commercial: wi.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', {
      section: 'ATCP 75 appendix 3-403.11',
    }),
  },
};
