import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const md = code({
  prefix: 'MD',
  edition: 'COMAR 10.15.03, 2024',
  checked: 'read',
  where: 'read in the Justia, Cornell and Casetext copies of COMAR 10.15.03, 2024',
});
const { figures } = fda2013;
const rule = 'COMAR 10.15.03';
const about = { section: rule };
const cooled = { section: rule, speaks_of: 'cooked food that is cooled' };
const warm = { degF: 70, degC: 21 };
const notThere = [149, 153, 157];
const ground = md.restated(figures.cook.ground, 'COOK-2', about);

export const usMd: ProfileSource = {
  id: 'us_md',
  name: 'Maryland',
  place: 'USA, Maryland',
  force: 'law',
  edition: 'COMAR 10.15.03, 2024',
  extends: 'fda_2013',
  notes: [
    'Food and unit thermometers are calibrated at least yearly.',
    'Every high or moderate priority kitchen has a HACCP plan in its preparation area, renewed at least every 5 years.',
    'Pans at most 3 in deep are one listed way of cooling.',
  ],
  figures: {
    hot_hold: md.restated(figures.hot_hold, 'HOLD-HOT', {
      section: 'COMAR 10.15.03.06',
      checked: 'memory',
      where: 'from memory; regulation .06B(7) was not read',
    }),
    cooling: [
      md.stage('stage_1', [{ degF: 135, degC: 57 }, warm, 120], 'from_start', cooled),
      md.stage('stage_2', [warm, { degF: 41, degC: 5 }, 240], 'from_previous', cooled),
    ],
    reheat_within: md.restated(figures.reheat_within, 'REHEAT-TIME', about),
    reheat_conventional: md.route(figures.reheat_conventional, 'REHEAT', about),
    reheat_commercial: md.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', about),
    roast_chart: {
      ...md.restated(figures.roast_chart, 'COOK-ROAST', about),
      rows: figures.roast_chart.rows.filter(({ degF }) => !notThere.includes(degF)),
    },
    roast_oven: md.restated(figures.roast_oven, 'COOK-OVEN', about),
    cook: { ...figures.cook, ground, injected_or_tenderized: ground, sausage_raw: ground, egg: ground },
    probe_fahrenheit: md.restated(figures.probe_fahrenheit, 'PROBE-F', about),
  },
};
