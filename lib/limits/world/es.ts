import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const decree = published({
  prefix: 'ES',
  edition: 'RD 1086/2020, version of 21 December 2022',
  checked: 'read',
  where: 'the consolidated text',
  force: 'law',
});

/** Spain. Restaurants come under it by RD 1021/2022 art. 6. */
export const es: ProfileSource = {
  id: 'es',
  name: 'Spain, Royal Decree 1086/2020',
  place: 'Spain',
  force: 'law',
  edition: 'RD 1086/2020, version of 21 December 2022',
  extends: 'eu',
  notes: [
    'The figures stand in RD 1086/2020; RD 1021/2022 only points there, and repealed the decree that said 65 °C (that repeal was read second hand).',
    'Cooling says less than two hours: exactly two does not keep it.',
    'Cold: 4 °C where the food lasts over 24 h, 8 °C where it lasts less. Exactly 24 h is in neither. The record does not say which it is, so 4 is judged.',
    'Other temperatures with scientific proof are allowed for chilled food only (30.5), not for hot holding. A lower reheat with an equal time is allowed (30.7) and not judged here.',
    'What was reheated and is left over is thrown away: no second reheat (30.7).',
    'Sample meals for groups, events and orders over 40: 100 g, 7 days, at 4 °C or below or −18 °C or below (30.8 to 30.10).',
    'How long records are kept: no figure was found.',
  ],
  figures: {
    hot_hold: decree.degrees('HOT', 'at_or_above', 63, {
      section: 'RD 1086/2020 art. 30.2',
      speaks_of:
        'cooked food that is neither chilled, frozen nor served as soon as it can be, until it is served',
    }),
    cold_hold: decree.degrees('COLD', 'at_or_below', 4, {
      section: 'RD 1086/2020 art. 30.3',
      speaks_of: 'the inside of chilled food that lasts over 24 h, and of food whose time is not known',
    }),
    cooling: [
      decree.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 60],
          to: ['at_or_below', 10],
          within: ['less_than', 120],
          counted: 'from_start',
        },
        { section: 'RD 1086/2020 art. 30.6', speaks_of: 'the centre of food cooled to be kept cold' },
      ),
    ],
    reheat_from: decree.degrees('REHEAT-FROM', 'at_or_below', 4, {
      section: 'RD 1086/2020 art. 30.7',
      speaks_of:
        'the hour begins when the food leaves the refrigerator; its figure there stands for that moment',
    }),
    reheat_within: decree.minutes('REHEAT-TIME', 'at_most', 60, {
      section: 'RD 1086/2020 art. 30.7',
      speaks_of: 'within an hour of leaving the refrigerator',
    }),
    reheat_conventional: route(
      decree.degrees('REHEAT', 'at_or_above', 74, {
        section: 'RD 1086/2020 art. 30.7',
        speaks_of: 'the centre, for at least 15 seconds',
      }),
      15,
    ),
  },
};
