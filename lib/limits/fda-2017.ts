import { foodCode } from './fda.ts';
import type { Seen } from './fda-edition.ts';

const read = (where: string): Seen => ({ checked: 'read', where });
const unchanged = (where: string): Seen => ({
  checked: 'memory',
  where: `${where}; the 2017 text of it was not read and is taken as unchanged`,
});

export const fda2017 = foodCode({
  id: 'fda_2017',
  name: 'FDA Food Code 2017',
  mark: 'FC17',
  seen: {
    hold: read('read in the Washington code, which reprints 3-501.16 in its text of 2009 and later'),
    cooling: unchanged('read in the Delaware, Wisconsin and Minnesota codes that reprint 3-501.14'),
    cooling_methods: unchanged('read in the Washington code that reprints the 2009 text of 3-501.15'),
    reheat: read(
      'read in the South Carolina code as amended in 2019, which reprints the 2017 text of 3-403.11',
    ),
    cook_rows: read('read in the Virginia, South Carolina and Georgia codes that reprint the 2017 text'),
    roast_chart: read(
      'read in the South Carolina code and Florida violation texts, in part in the Virginia code, which reprint the 2017 text',
    ),
    roast_oven: read('read in the South Carolina code that reprints the 2017 text'),
    cook_microwave: unchanged('read in the Virginia code of 2016 that reprints 3-401.12'),
    cook_plant: read('read in the South Carolina code that reprints 3-401.13'),
    noncontinuous: unchanged('read in the Virginia code of 2016 that reprints 3-401.14'),
    date_mark: unchanged(
      'read in the Virginia code of 2016 and the Minnesota code that reprint 3-501.17 and .18',
    ),
    time_control: read(
      'read in the Wyoming, Minnesota and Wisconsin codes, whose words are those of 2009 to 2017',
    ),
    thermometers: {
      checked: 'memory',
      where: 'the same words read in the California code; section number and 2017 text from memory',
    },
  },
  ground_s: 17,
  poultry_s: 0,
  ovenWords: 'the chart comes first, (B)(1), and the oven second, (B)(2), if the roast is cooked in an oven',
  addedStarts: null,
  notes: ['Read only in state codes that reprint it; FDA’s own print was not read.'],
});
