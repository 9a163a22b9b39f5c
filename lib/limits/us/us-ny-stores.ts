import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const { degrees } = code({
  prefix: 'NYS',
  edition: '1 NYCRR 271, December 2024',
  checked: 'read',
  where: 'read in the Casetext copy of 1 NYCRR 271, December 2024',
});
const section = '1 NYCRR 271';

export const usNyStores: ProfileSource = {
  id: 'us_ny_stores',
  name: 'New York State, stores',
  place: 'USA, New York',
  force: 'law',
  edition: '1 NYCRR 271, December 2024',
  extends: 'fda_2022',
  notes: [
    'Cooling, reheating and cooking were not read: the figures shown are FDA’s.',
    'At salad bars time outside these is at most 4 h, with records of the times; the state’s time control was otherwise not read and has no figure here.',
  ],
  figures: {
    hot_hold: degrees(
      'HOLD-HOT',
      'at_or_above',
      { degF: 135, degC: 57 },
      { section, speaks_of: 'food held hot' },
    ),
    hot_hold_roast: degrees(
      'HOLD-ROAST',
      'at_or_above',
      { degF: 130, degC: 54 },
      {
        section,
        speaks_of: 'rare roast beef',
        disputed: 'on the first day of service only, which readings do not show',
      },
    ),
    time_control: null,
  },
};
