import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const sd = code({
  prefix: 'SD',
  edition: 'S.D. 44:02:07',
  checked: 'read',
  where: 'read in copies of S.D. 44:02:07:28, :31, :33 and :97',
});
const section = 'S.D. 44:02:07';
const hot = { degF: 140, degC: 60 };
const again = { section, speaks_of: 'food reheated to be held hot' };

export const usSd: ProfileSource = {
  id: 'us_sd',
  name: 'South Dakota',
  place: 'USA, South Dakota',
  force: 'law',
  edition: '44:02:07',
  extends: 'fda_2013',
  notes: [
    'Its rules for cooling were not read: the times shown are FDA’s. Which edition it follows is not known.',
  ],
  figures: {
    hot_hold: sd.degrees('HOLD-HOT', 'at_or_above', hot, { section, speaks_of: 'food held hot' }),
    hot_hold_roast: sd.degrees(
      'HOLD-ROAST',
      'at_or_above',
      { degF: 130, degC: 54 },
      {
        section,
        speaks_of: 'roasts',
      },
    ),
    reheat_within: sd.minutes('REHEAT-TIME', 60, again),
    reheat_conventional: {
      target: sd.degrees('REHEAT', 'at_or_above', { degF: 165, degC: 74 }, again),
      held_s: 15,
      stand_s: null,
    },
    reheat_microwave: {
      target: sd.degrees('REHEAT-MICRO', 'at_or_above', { degF: 190, degC: 88 }, again),
      held_s: 0,
      stand_s: null,
    },
    reheat_commercial: {
      target: sd.degrees('REHEAT-COMMERCIAL', 'at_or_above', hot, again),
      held_s: 0,
      stand_s: null,
    },
  },
};
