import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const ny = code({
  prefix: 'NY',
  edition: '10 NYCRR 14-1, September 2024',
  checked: 'read',
  where: 'read in the Justia copy of 10 NYCRR 14-1.40, .44, .45 and .83, September 2024',
});
const hold = '10 NYCRR 14-1.40';
const rule = '10 NYCRR 14-1';
const hot = { degF: 140, degC: 60 };
const cold = { degF: 45, degC: 7.2 };
const warm = { degF: 70, degC: 21.1 };
const heated = { degF: 165, degC: 73.9 };
const cooled = { section: hold, speaks_of: 'cooked food that is cooled' };
const again = { section: rule, speaks_of: 'food reheated, its whole mass' };

export const usNy: ProfileSource = {
  id: 'us_ny',
  name: 'New York State, restaurants',
  place: 'USA, New York',
  force: 'law',
  edition: '10 NYCRR 14-1, September 2024',
  extends: 'fda_2022',
  notes: [
    'No roast allowance. Under 140 °F while held for service is no breach until 2 h have passed; the start of service has to be known.',
    'Reheated food is then held above 140 °F: exactly 140 °F would not do. The hold is judged at or above.',
    'Its rules for cooking were not read: the rows shown are FDA’s. Time control and date marks of the state were not read and have no figure here.',
    'Stores are under 1 NYCRR 271, New York City under its own code.',
  ],
  figures: {
    hot_hold: ny.degrees('HOLD-HOT', 'at_or_above', hot, { section: hold, speaks_of: 'food held hot' }),
    hot_hold_roast: null,
    hot_hold_defences: [
      ny.defence('HOLD-SERVICE', 'Preparation, or held for service for at most 2 h', 120, {
        section: hold,
        speaks_of: 'food in preparation or held for service',
      }),
    ],
    cold_hold: ny.degrees('HOLD-COLD', 'at_or_below', cold, { section: hold, speaks_of: 'food held cold' }),
    cooling: [
      ny.stage('stage_1', [{ degF: 120, degC: 48.9 }, warm, 120], 'from_start', cooled),
      ny.stage('stage_2', [warm, cold, 240], 'from_previous', cooled),
    ],
    reheat_from: ny.degrees('REHEAT-FROM', 'at_or_below', cold, again),
    reheat_within: ny.minutes('REHEAT-TIME', 120, again),
    reheat_conventional: {
      target: ny.degrees('REHEAT', 'at_or_above', heated, again),
      held_s: 0,
      stand_s: null,
    },
    reheat_microwave: {
      target: ny.degrees('REHEAT-MICRO', 'at_or_above', heated, again),
      held_s: 0,
      stand_s: null,
    },
    reheat_commercial: {
      target: ny.degrees('REHEAT-COMMERCIAL', 'at_or_above', hot, {
        section: rule,
        speaks_of: 'first warming of commercially prepared food',
      }),
      held_s: 0,
      stand_s: null,
    },
    reheat_roast: null,
    reheat_immediate: null,
    time_control: null,
    date_mark: null,
  },
};
