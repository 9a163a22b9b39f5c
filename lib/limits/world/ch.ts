import type { ProfileSource } from '../profile.ts';

/** Switzerland: like the European text, a duty without a number. */
export const ch: ProfileSource = {
  id: 'ch',
  name: 'Switzerland, hygiene ordinance of the FDHA',
  place: 'Switzerland',
  force: 'law',
  edition: 'version of 2024',
  extends: null,
  notes: [
    'Art. 27 (read): food is held hot at a temperature at which germs do not grow, watched with thermometers. There is no figure; the kitchen’s own plan sets it.',
  ],
  figures: {},
};
