import { fda2013 } from '../fda-2013.ts';
import type { ProfileSource } from '../profile.ts';
import { code, onlyF } from './code.ts';

const ca = code({
  prefix: 'CA',
  edition: 'California Health and Safety Code, 2023',
  checked: 'read',
  where: 'read in copies of the Health and Safety Code of 2016 and 2023',
});
const { figures } = fda2013;
const cooled = { section: 'HSC 114002', speaks_of: 'cooked food that is cooled' };
const again = { section: 'HSC 114016', speaks_of: 'food reheated to be held hot' };

export const usCa: ProfileSource = {
  id: 'us_ca',
  name: 'California',
  place: 'USA, California',
  force: 'law',
  edition: 'Health and Safety Code, 2023',
  extends: 'fda_2013',
  notes: [
    'Only °F is published: a reading in °C is converted exactly.',
    'The 2 h of reheating count between 41 and 165 °F for every route, an unsliced roast too; the commercial route is read as 2 h to 135 °F.',
    'Meat is cooked by FDA’s rows here: the state’s own were not read. Its time control and date marks were not read and have no figure here.',
    'Food thermometers are calibrated by the maker’s specification and read in steps of at most 2 °F.',
  ],
  figures: {
    hot_hold: ca.degrees('HOLD-HOT', 'at_or_above', onlyF(135), {
      section: 'HSC 113996',
      speaks_of: 'food held hot',
    }),
    hot_hold_roast: ca.degrees('HOLD-ROAST', 'at_or_above', onlyF(130), {
      section: 'HSC 113996',
      speaks_of: 'roasts cooked by HSC 114004(b)',
    }),
    hot_hold_defences: [
      ca.defence('HOLD-PREP', 'Preparation, at most 2 h added up', 120, {
        section: 'HSC 113996',
        speaks_of: 'food in preparation',
      }),
      ca.defence('HOLD-MOVE', 'Transport for less than 30 min', 30, {
        section: 'HSC 113996',
        speaks_of: 'food in transport',
      }),
    ],
    cooling: [
      ca.stage('stage_1', [onlyF(135), onlyF(70), 120], 'from_start', cooled),
      ca.stage('total', [onlyF(135), onlyF(41), 360], 'from_start', cooled),
    ],
    reheat_from: ca.degrees('REHEAT-FROM', 'at_or_below', onlyF(41), again),
    reheat_within: ca.minutes('REHEAT-TIME', 120, again),
    reheat_conventional: {
      target: ca.degrees('REHEAT', 'at_or_above', onlyF(165), again),
      held_s: 15,
      stand_s: null,
    },
    reheat_microwave: {
      target: ca.degrees('REHEAT-MICRO', 'at_or_above', onlyF(165), again),
      held_s: 0,
      stand_s: 120,
    },
    reheat_commercial: {
      target: ca.degrees('REHEAT-COMMERCIAL', 'at_or_above', onlyF(135), again),
      held_s: 0,
      stand_s: null,
    },
    cook: {
      ...figures.cook,
      plant: ca.restated(figures.cook.plant, 'COOK-PLANT', { section: 'HSC 114010' }),
    },
    time_control: null,
    date_mark: null,
    probe_fahrenheit: ca.restated(figures.probe_fahrenheit, 'PROBE-F', { section: 'HSC 114159' }),
    probe_celsius: ca.restated(figures.probe_celsius, 'PROBE-C', { section: 'HSC 114159' }),
  },
};
