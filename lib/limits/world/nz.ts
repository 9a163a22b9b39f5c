import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const plan = published({
  prefix: 'NZ',
  edition: 'template food control plan, as a training text of 2020 restates it',
  checked: 'second_hand',
  where: 'a training text of 2020; the official cards were not seen',
  force: 'law',
});

/** New Zealand: the template plan under the Food Act 2014. */
export const nz: ProfileSource = {
  id: 'nz',
  name: 'New Zealand, template food control plan under the Food Act 2014',
  place: 'New Zealand',
  force: 'law',
  edition: 'as restated in 2020',
  extends: null,
  notes: [
    'It binds a kitchen that has this plan. The Australian standards do not apply here (read).',
    'Above 60 °C: exactly 60 does not keep it.',
    'A look every 2 h: too low, reheat above 75 °C and turn the cabinet up; below 60 again at the next look, throw away.',
    'Cooling: into the refrigerator at 21 °C or at room temperature, whichever is colder; look at 4 h. An older plan said 4 instead of 5 °C.',
  ],
  figures: {
    hot_hold: plan.degrees('HOT', 'above', 60, {
      section: 'template plan, hot holding',
      speaks_of: 'food in a hot cabinet, heated to 75 °C before it goes in',
    }),
    hot_hold_defences: [
      plan.defence(
        'HOT-OUT',
        'Below 60 °C for less than 2 h, then reheated fully and served above 60 °C, or cooled below 5 °C within 4 h',
        120,
        { section: 'template plan, food out of control', speaks_of: 'what the business has to show' },
      ),
    ],
    record_hot_every: plan.minutes('RECORD', 'at_most', 120, {
      section: 'template plan, hot holding',
      where: 'the training text of 2020 for the look; an older plan asked for it in writing',
      speaks_of: 'food held hot, looked at with a probe',
    }),
    cooling: [
      plan.stage(
        'COOL-1',
        'stage_1',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 21],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        {
          section: 'template plan, cooling',
          where: 'a weaker restatement than the rest',
          speaks_of: 'cooked food, to 21 °C or the room’s temperature',
        },
      ),
      plan.stage(
        'COOL-T',
        'total',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 5],
          within: ['less_than', 360],
          counted: 'from_start',
        },
        { section: 'template plan, cooling', speaks_of: 'cooked food, in less than six hours in all' },
      ),
    ],
    reheat_conventional: route(
      plan.degrees('REHEAT', 'at_or_above', 75, {
        section: 'template plan, reheating',
        speaks_of: 'the coolest place, then held above 60 °C',
      }),
      0,
    ),
    retention: plan.retention('KEEP', 'at least 4 years', {
      section: 'template plan, records',
      speaks_of: 'records of the plan',
    }),
  },
};
