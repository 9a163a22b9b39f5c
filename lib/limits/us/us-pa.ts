import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const { degrees } = code({
  prefix: 'PA',
  edition: '7 Pa. Code 46.385',
  checked: 'read',
  where: 'read on the Pennsylvania Code site',
});
const section = '7 Pa. Code 46.385';

export const usPa: ProfileSource = {
  id: 'us_pa',
  name: 'Pennsylvania',
  place: 'USA, Pennsylvania',
  force: 'law',
  edition: '7 Pa. Code 46',
  extends: 'fda_2013',
  notes: [
    'Prints 135 °F as 58 °C: a reading in °C is compared with 58. Milk and eggs have 45 °F.',
    'Cooling and reheating were not read; the section may have been superseded.',
  ],
  figures: {
    hot_hold: degrees(
      'HOLD-HOT',
      'at_or_above',
      { degF: 135, degC: 58 },
      { section, speaks_of: 'food held hot' },
    ),
    hot_hold_roast: degrees(
      'HOLD-ROAST',
      'at_or_above',
      { degF: 130, degC: 54 },
      {
        section,
        speaks_of: 'roasts',
      },
    ),
  },
};
