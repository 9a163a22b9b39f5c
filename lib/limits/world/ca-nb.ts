import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const law = published({
  prefix: 'CA-NB',
  edition: 'N.B. Reg. 2009-138, version of 26 August 2020',
  checked: 'read',
  where: 'the regulation',
  force: 'law',
});
const hold = 'N.B. Reg. 2009-138 s. 27(1)(b)';
const cool = 'N.B. Reg. 2009-138 s. 27(1)(c)';
const reheat = 'N.B. Reg. 2009-138 s. 27(1)(e)';
const cook = 'N.B. Reg. 2009-138 s. 27(1)(f), Schedule A';
const beef = law.chart('COOK-BEEF', [[63, 0]], {
  section: cook,
  speaks_of: 'steaks and roasts of beef and veal, medium rare; 71 °C is medium and 77 °C well done',
});
const pork = law.chart('COOK-PORK', [[71, 0]], {
  section: cook,
  speaks_of: 'pork; also the intact roast, for its class does not say which animal it is of',
});
const ground = law.chart('COOK-GROUND', [[71, 0]], {
  section: cook,
  speaks_of: 'ground beef, pork and veal; ground poultry is of the class of poultry',
});
const poultry = law.chart('COOK-BIRD', [[82, 0]], {
  section: cook,
  speaks_of: 'a whole bird, and whatever is not known; pieces and ground poultry need 74 °C only',
});

/** New Brunswick. */
export const caNb: ProfileSource = {
  id: 'ca_nb',
  name: 'New Brunswick, Regulation 2009-138',
  place: 'Canada: New Brunswick',
  force: 'law',
  edition: 'N.B. Reg. 2009-138, version of 26 August 2020',
  extends: null,
  notes: [
    'Cooling: the six hours are a total, so a quick first stage leaves more for the second.',
    'Every four hours: from loading each batch, the stricter reading; the text could also mean the first load of the cabinet.',
    'Cooking poultry: the class does not tell a whole bird from pieces, so the bird’s 82 °C is judged; pieces need 74. Stuffing, casseroles and leftovers: 74.',
    'Cold equipment is read at least twice a day (s. 32(2)). The thermometer of cold equipment has to be accurate and in good repair; no figure.',
    'Records have to be made; how long they are kept was not seen.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'at_or_above', 60, {
      section: hold,
      speaks_of: 'hazardous food held, stored, displayed or transported',
    }),
    record_hot_every: law.minutes('RECORD', 'at_most', 240, {
      section: 'N.B. Reg. 2009-138 s. 32(3)',
      speaks_of: 'food in hot-holding equipment, taken and written after it was loaded',
    }),
    cold_hold: law.degrees('COLD', 'at_or_below', 4, {
      section: hold,
      speaks_of: 'hazardous food held, stored, displayed or transported',
    }),
    cooling: [
      law.stage(
        'COOL-1',
        'stage_1',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 20],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        { section: cool, speaks_of: 'cooked food that is cooled' },
      ),
      law.stage(
        'COOL-T',
        'total',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 4],
          within: ['at_most', 360],
          counted: 'from_start',
        },
        { section: cool, speaks_of: 'cooked food that is cooled, a total' },
      ),
    ],
    reheat_from: law.degrees('REHEAT-FROM', 'at_or_below', 4, {
      section: reheat,
      speaks_of: 'the figure of cold holding, from which the time counts',
    }),
    reheat_within: law.minutes('REHEAT-TIME', 'at_most', 120, {
      section: reheat,
      speaks_of: 'food that is heated again',
    }),
    reheat_conventional: route(
      law.degrees('REHEAT', 'at_or_above', 74, {
        section: reheat,
        speaks_of: 'food that is heated again, for 15 seconds',
      }),
      15,
    ),
    cook: {
      beef_whole: beef,
      pork_whole: pork,
      intact_roast: pork,
      ground,
      poultry,
      unknown: poultry,
    },
  },
};
