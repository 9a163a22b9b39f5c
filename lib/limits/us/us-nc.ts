import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const nc = code({
  prefix: 'NC',
  edition: '15A NCAC 18A .2650, 2012',
  checked: 'read',
  where: 'read in the proposal of 2012 and the contents of the state manual',
});
const { figures } = fda2013;

export const usNc: ProfileSource = {
  id: 'us_nc',
  name: 'North Carolina',
  place: 'USA, North Carolina',
  force: 'law',
  edition: '15A NCAC 18A .2650, 2012',
  extends: 'fda_2013',
  notes: [
    'The 2009 Food Code by reference from 2012; a later move to 2017 is from memory. What is not named here is FDA’s of 2013.',
    'The state’s worked example of date marks does not count the day on which food is frozen.',
  ],
  figures: {
    hot_hold: nc.restated(figures.hot_hold, 'HOLD-HOT', { section: '15A NCAC 18A .2650' }),
  },
};
