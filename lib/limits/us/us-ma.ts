import type { ProfileSource } from '../profile.ts';

export const usMa: ProfileSource = {
  id: 'us_ma',
  name: 'Massachusetts',
  place: 'USA, Massachusetts',
  force: 'law',
  edition: '105 CMR 590, November 2018',
  extends: 'fda_2013',
  notes: [
    'Adopted by reference: FDA’s figures, printed as the model’s, bind here as law.',
    'Adopts the 2013 Food Code with its supplement; the adoption clause was read. Local boards may add to it.',
  ],
  figures: {},
};
