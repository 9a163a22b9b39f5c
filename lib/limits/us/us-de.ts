import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const de = code({
  prefix: 'DE',
  edition: '16 Del. Admin. Code, Food Code of 2014',
  checked: 'read',
  where: 'read in the Casetext copy, 2024 to 2025',
});
const { figures } = fda2013;

export const usDe: ProfileSource = {
  id: 'us_de',
  name: 'Delaware',
  place: 'USA, Delaware',
  force: 'law',
  edition: '16 Del. Admin. Code, Food Code of 2014',
  extends: 'fda_2013',
  notes: [],
  figures: {
    hot_hold: de.restated(figures.hot_hold, 'HOLD-HOT', { section: '16 Del. Admin. Code 3-501.16' }),
    hot_hold_roast: de.restated(figures.hot_hold_roast, 'HOLD-ROAST', {
      section: '16 Del. Admin. Code 3-501.16',
    }),
    cold_hold: de.restated(figures.cold_hold, 'HOLD-COLD', { section: '16 Del. Admin. Code 3-501.16' }),
    cooling: de.stages(figures.cooling, { section: '16 Del. Admin. Code 3-501.14' }),
    reheat_within: de.restated(figures.reheat_within, 'REHEAT-TIME', {
      section: '16 Del. Admin. Code 3-403.11',
    }),
    reheat_conventional: de.route(figures.reheat_conventional, 'REHEAT', {
      section: '16 Del. Admin. Code 3-403.11',
    }),
    reheat_microwave: de.route(figures.reheat_microwave, 'REHEAT-MICRO', {
      section: '16 Del. Admin. Code 3-403.11',
    }),
    reheat_commercial: de.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', {
      section: '16 Del. Admin. Code 3-403.11',
    }),
  },
};
