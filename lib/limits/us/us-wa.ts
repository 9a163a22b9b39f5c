import { fda2017 } from '../fda-2017.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const wa = code({
  prefix: 'WA',
  edition: 'WAC 246-215, in force from 1 March 2022',
  checked: 'read',
  where: 'read in the state legislature’s archive of 2022 and a copy of 2024',
});
const { figures } = fda2017;
const holdSection = { section: 'WAC 246-215-03525' };
const cool = { section: 'WAC 246-215-03515' };

export const usWa: ProfileSource = {
  id: 'us_wa',
  name: 'Washington',
  place: 'USA, Washington',
  force: 'law',
  edition: 'WAC 246-215, 2022',
  extends: 'fda_2017',
  notes: [
    'The first way of cooling has no clock. A piece of meat over 4 in thick has to use the 2 h and 6 h.',
    'Temporary stands reheat within 1 h, once only, and cool nothing: no profile here has that.',
  ],
  figures: {
    hot_hold: wa.restated(figures.hot_hold, 'HOLD-HOT', holdSection),
    hot_hold_roast: wa.restated(figures.hot_hold_roast, 'HOLD-ROAST', holdSection),
    hot_hold_defences: [
      wa.defence('HOLD-PREP', 'Preparation, up to 2 h', 120, {
        ...holdSection,
        speaks_of: 'food in preparation',
      }),
    ],
    cold_hold: wa.restated(figures.cold_hold, 'HOLD-COLD', holdSection),
    cooling: wa.stages(figures.cooling, cool),
    cooling_untimed: {
      asked: wa.asked('COOL-OPEN', {
        ...cool,
        speaks_of: 'food cooled uncovered, protected, in a cold unit, not touching, in a thin layer or piece',
      }),
      air: wa.degrees(
        'COOL-OPEN-AIR',
        'at_or_below',
        { degF: 41, degC: 5 },
        {
          ...cool,
          speaks_of: 'the air of the unit',
        },
      ),
      layer_in: 2,
      intact_in: 4,
    },
  },
};
