import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const mn = code({
  prefix: 'MN',
  edition: 'Minn. Rules 4626',
  checked: 'read',
  where: 'read in the Revisor’s text of Minn. Rules 4626, its 2019 print and the Justia copy of 2024',
});
const { figures } = fda2013;
const cook = { section: 'Minn. Rules 4626.0340' };
const again = { section: 'Minn. Rules 4626.0360' };
const time = { section: 'Minn. Rules 4626.0408' };
const fromMemory = {
  section: 'Minn. Rules 4626.0395',
  checked: 'memory',
  where: 'from memory; part 4626.0395 was not read',
} as const;
const ground = mn.restated(figures.cook.ground, 'COOK-2', cook);
const poultry = mn.restated(figures.cook.poultry, 'COOK-3', cook);
const tphc = figures.time_control;

export const usMn: ProfileSource = {
  id: 'us_mn',
  name: 'Minnesota',
  place: 'USA, Minnesota',
  force: 'law',
  edition: 'Minn. Rules 4626',
  extends: 'fda_2013',
  notes: ['Time control starts below 41 °F or above 135 °F: exactly either does not qualify.'],
  figures: {
    hot_hold: mn.restated(figures.hot_hold, 'HOLD-HOT', fromMemory),
    hot_hold_roast: mn.restated(figures.hot_hold_roast, 'HOLD-ROAST', fromMemory),
    cooling: mn.stages(figures.cooling, { section: 'Minn. Rules 4626.0385' }),
    reheat_within: mn.restated(figures.reheat_within, 'REHEAT-TIME', again),
    reheat_conventional: mn.route(figures.reheat_conventional, 'REHEAT', again),
    reheat_microwave: mn.route(figures.reheat_microwave, 'REHEAT-MICRO', again),
    reheat_commercial: mn.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', again),
    roast_oven: mn.restated(figures.roast_oven, 'COOK-OVEN', cook),
    cook: {
      ...figures.cook,
      ground,
      injected_or_tenderized: ground,
      sausage_raw: ground,
      egg: ground,
      poultry,
      unknown: poultry,
    },
    time_control: {
      procedure: mn.restated(tphc.procedure, 'TPHC-PROC', time),
      marking: mn.restated(tphc.marking, 'TPHC-MARK', time),
      four_hours: {
        starts: [
          {
            figure: mn.degrees(
              'TPHC-4-COLD',
              'below',
              { degF: 41, degC: 5 },
              {
                ...time,
                speaks_of: 'food out of cold holding',
              },
            ),
          },
          {
            figure: mn.degrees(
              'TPHC-4-HOT',
              'above',
              { degF: 135, degC: 57 },
              {
                ...time,
                speaks_of: 'food out of hot holding',
              },
            ),
          },
        ],
        stays: null,
        within: mn.restated(tphc.four_hours.within, 'TPHC-4', time),
      },
      six_hours: {
        starts: tphc.six_hours.starts.map(({ figure }) => ({
          figure: mn.restated(figure, 'TPHC-6-COLD', time),
        })),
        stays: mn.restated(tphc.six_hours.stays, 'TPHC-6-STAYS', time),
        within: mn.restated(tphc.six_hours.within, 'TPHC-6', time),
      },
    },
  },
};
