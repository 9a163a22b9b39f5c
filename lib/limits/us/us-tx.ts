import type { ProfileSource } from '../profile.ts';

export const usTx: ProfileSource = {
  id: 'us_tx',
  name: 'Texas',
  place: 'USA, Texas',
  force: 'law',
  edition: '25 TAC 228, August 2021',
  extends: 'fda_2017',
  notes: [
    'Adopted by reference: FDA’s figures, printed as the model’s, bind here as law.',
    'The consolidated rules of August 2021 list no cooking or holding section: the Food Code applies by reference. That it is the 2017 edition is from memory.',
    'Rules before it printed 155 °F for 15 s and 165 °F for 15 s; those of farmers’ markets print 135 °F as 54 °C, a slip.',
  ],
  figures: {},
};
