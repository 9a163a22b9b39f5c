import type { ProfileSource } from '../profile.ts';
import { scheduleFour } from './uk-schedule-4.ts';

const sister =
  'read in the Welsh sister text; the English paragraph was not seen and is taken to be worded and numbered alike';

/** England. */
export const ukEngland: ProfileSource = {
  id: 'uk_england',
  name: 'England, Food Safety and Hygiene Regulations 2013',
  place: 'United Kingdom: England',
  force: 'law',
  edition: 'SI 2013/2996',
  extends: null,
  ...scheduleFour('UK-ENG', 'SI 2013/2996', {
    para_2: { checked: 'read', where: 'the English regulations' },
    para_6: { checked: 'second_hand', where: sister },
    para_7: {
      checked: 'second_hand',
      where: 'read in the Welsh text and in the English regulations of 2005 that went before',
    },
  }),
};
