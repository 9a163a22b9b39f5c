import { foodCode } from './fda.ts';
import type { Seen } from './fda-edition.ts';

const read = (where: string): Seen => ({ checked: 'read', where });

export const fda2013 = foodCode({
  id: 'fda_2013',
  name: 'FDA Food Code 2013',
  mark: 'FC13',
  seen: {
    hold: read('read in the Delaware code, which reprints the 2013 text of 3-501.16'),
    cooling: read('read in the Delaware and Wisconsin codes, which reprint the 2013 text of 3-501.14'),
    cooling_methods: {
      checked: 'memory',
      where:
        'read in the Washington code that reprints the 2009 text of 3-501.15; the 2013 text of it was not read and is taken as unchanged',
    },
    reheat: read('read in the Delaware and Wisconsin codes, which reprint the 2013 text of 3-403.11'),
    cook_rows: read(
      'read in the former Virginia and Texas rules and the Minnesota rule, which print the 2013 text',
    ),
    roast_chart: read('read in a reprint of 3-401.11 in the order of the 2013 text'),
    roast_oven: read(
      'read in a reprint of 3-401.11 in the order of the 2013 text, and in the Minnesota rule',
    ),
    cook_microwave: read('read in the Virginia code of 2016 that reprints 3-401.12'),
    cook_plant: {
      checked: 'memory',
      where: 'read in the South Carolina code, a 2017 text; the 2013 text of it was not read',
    },
    noncontinuous: read('read in the Virginia code of 2016 that reprints 3-401.14'),
    date_mark: read('read in the Virginia code of 2016 that reprints 3-501.17 and .18'),
    time_control: read(
      'read in the Wyoming, Minnesota and Wisconsin codes, whose words are those of 2009 to 2017',
    ),
    thermometers: {
      checked: 'memory',
      where: 'the same words read in the California code; section number and 2013 text from memory',
    },
  },
  ground_s: 15,
  poultry_s: 15,
  ovenWords: 'the oven comes first and binds without a condition',
  addedStarts: null,
  notes: ['Read only in state codes and reprints; FDA’s own print was not read.'],
});
