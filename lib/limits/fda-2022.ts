import { foodCode } from './fda.ts';
import type { Seen } from './fda-edition.ts';

const unchanged = (where: string): Seen => ({
  checked: 'memory',
  where: `${where}; the 2022 text itself was not read and is taken as unchanged`,
});

export const fda2022 = foodCode({
  id: 'fda_2022',
  name: 'FDA Food Code 2022',
  mark: 'FC',
  seen: {
    hold: unchanged('read in the Delaware and Washington codes that reprint 3-501.16'),
    cooling: unchanged('read in the Delaware, Wisconsin and Minnesota codes that reprint 3-501.14'),
    cooling_methods: unchanged('read in the Washington code that reprints the 2009 text of 3-501.15'),
    reheat: unchanged(
      'read in the Delaware, South Carolina, Wisconsin and Minnesota codes that reprint 3-403.11, the 15 s of (A) in South Carolina’s 2017 text',
    ),
    cook_rows: unchanged('read in the Virginia, South Carolina and Georgia codes that reprint the 2017 text'),
    roast_chart: unchanged(
      'read in the South Carolina and Florida texts and in a reprint of the 2013 edition',
    ),
    roast_oven: unchanged(
      'read in the South Carolina and Minnesota codes and in a reprint of the 2013 edition',
    ),
    cook_microwave: unchanged('read in the Virginia code of 2016 that reprints 3-401.12'),
    cook_plant: unchanged('read in the South Carolina code that reprints 3-401.13'),
    noncontinuous: unchanged('read in the Virginia code of 2016 that reprints 3-401.14'),
    date_mark: unchanged(
      'read in the Virginia code of 2016 and the Minnesota code that reprint 3-501.17 and .18',
    ),
    time_control: unchanged(
      'read in the Wyoming, Minnesota and Wisconsin codes that reprint 3-501.19 of 2009 to 2017',
    ),
    thermometers: {
      checked: 'memory',
      where: 'the same words read in the California code; section number and 2022 text from memory',
    },
  },
  ground_s: 17,
  poultry_s: 0,
  ovenWords: 'the chart comes first and the oven second, if the roast is cooked in an oven',
  addedStarts: {
    checked: 'second_hand',
    where:
      'a Georgia rule quoted in a public inspection report of June 2026, and a trade article of 2023 that names the change',
  },
  notes: [
    'The 2022 text itself was not read. Its figures are those of the copies named beside each, taken as unchanged.',
    'A supplement of November 2024 exists; no temperature or time of this profile is known to have changed in it.',
    'No section says how often to take or write a temperature.',
  ],
});
