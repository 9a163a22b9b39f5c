import { fda2022 } from '../fda-2022.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const read = code({
  prefix: 'NYC',
  edition: 'Rules of the City of New York, time control for food service',
  checked: 'read',
  where: 'read in the American Legal code library',
});
const memory = code({
  prefix: 'NYC-81',
  edition: 'NYC Health Code article 81',
  checked: 'memory',
  where: 'article 81 was not read; the hold is drawn from the city’s time rule, the rest from memory',
});
const article = 'NYC Health Code article 81';
const time = { section: 'Rules of the City of New York, time control' };
const hot = { degF: 140, degC: 60 };
const warm = { degF: 70, degC: 21 };
const cold = { degF: 41, degC: 5 };
const cooled = { section: article, speaks_of: 'cooked food that is cooled' };
const tphc = fda2022.figures.time_control;

export const usNyc: ProfileSource = {
  id: 'us_nyc',
  name: 'New York City',
  place: 'USA, New York City',
  force: 'law',
  edition: 'time rule read, article 81 from memory',
  extends: 'fda_2022',
  notes: [
    'Article 81 itself was not read: hold, cooling and reheating are from memory.',
    'After time control food never goes back to temperature control. The 6 h are open only to food that at 4 h has not reached 70 °F; it is asked of the whole 6 h here.',
  ],
  figures: {
    hot_hold: memory.degrees('HOLD-HOT', 'at_or_above', hot, {
      section: article,
      speaks_of: 'food held hot',
    }),
    hot_hold_roast: null,
    cooling: [
      memory.stage('stage_1', [hot, warm, 120], 'from_start', cooled),
      memory.stage('stage_2', [warm, cold, 240], 'from_previous', cooled),
    ],
    reheat_within: memory.restated(fda2022.figures.reheat_within, 'REHEAT-TIME', { section: article }),
    reheat_conventional: memory.route(fda2022.figures.reheat_conventional, 'REHEAT', { section: article }),
    time_control: {
      procedure: read.restated(tphc.procedure, 'TPHC-PROC', time),
      marking: read.restated(tphc.marking, 'TPHC-MARK', time),
      four_hours: {
        starts: [
          { figure: read.degrees('TPHC-4-COLD', 'at_or_below', cold, { ...time, speaks_of: 'cold food' }) },
          { figure: read.degrees('TPHC-4-HOT', 'at_or_above', hot, { ...time, speaks_of: 'hot food' }) },
        ],
        stays: null,
        within: read.restated(tphc.four_hours.within, 'TPHC-4', time),
      },
      six_hours: {
        starts: [
          { figure: read.degrees('TPHC-6-COLD', 'at_or_below', cold, { ...time, speaks_of: 'cold food' }) },
        ],
        stays: read.degrees('TPHC-6-STAYS', 'below', warm, {
          ...time,
          speaks_of: 'cold food kept by time alone',
        }),
        within: read.restated(tphc.six_hours.within, 'TPHC-6', time),
      },
    },
  },
};
