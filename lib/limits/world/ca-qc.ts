import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const law = published({
  prefix: 'CA-QC',
  edition: 'P-29 r. 1, version of 26 February 2024',
  checked: 'read',
  where: 'the regulation',
  force: 'law',
});
const section = 'P-29 r. 1 s. 1.4.1';

/** Quebec. */
export const caQc: ProfileSource = {
  id: 'ca_qc',
  name: 'Quebec, Regulation respecting food',
  place: 'Canada: Quebec',
  force: 'law',
  edition: 'P-29 r. 1, version of 26 February 2024',
  extends: null,
  notes: [
    'Cooling: without delay to 4 °C inside and around the food; there is no time in figures, so cooling is not judged.',
    'Each cold unit has a thermometer that shows its warmest place (s. 2.1.3.2).',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'at_or_above', 60, {
      section,
      speaks_of: 'the inside of the food, until it is handed to the consumer',
    }),
    cold_hold: law.degrees('COLD', 'at_or_below', 4, {
      section,
      speaks_of: 'the inside of the food, and what surrounds it',
    }),
    probe_celsius: law.accuracy('PROBE', 1, {
      section: 'P-29 r. 1 s. 2.1.3.2',
      edition: 'P-29 r. 1, version of 28 November 2019',
      speaks_of: 'working thermometers of a food business',
    }),
  },
};
