import type { ProfileSource } from '../profile.ts';
import { scheduleFour } from './uk-schedule-4.ts';

const sister = 'read in the Welsh sister text; this paragraph of the Northern Irish one was not seen';

/** Northern Ireland. */
export const ukNi: ProfileSource = {
  id: 'uk_ni',
  name: 'Northern Ireland, Food Hygiene Regulations 2006',
  place: 'United Kingdom: Northern Ireland',
  force: 'law',
  edition: 'SR 2006/3',
  extends: null,
  ...scheduleFour('UK-NI', 'SR 2006/3', {
    para_2: {
      checked: 'second_hand',
      where: 'read in the English and Welsh sister texts; of the Northern Irish one para 5 was read',
    },
    para_6: { checked: 'second_hand', where: sister },
    para_7: { checked: 'second_hand', where: sister },
  }),
};
