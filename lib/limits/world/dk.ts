import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const guide = published({
  prefix: 'DK',
  edition: 'hygiene guide of the Veterinary and Food Administration, before 2026',
  checked: 'read',
  where: 'the hygiene guide, section 27.1',
  force: 'advice',
});
const through = guide.chart('COOK', [[75, 0]], {
  section: 'hygiene guide 27.1',
  speaks_of: 'heated through, unless less is shown safe in writing',
});

/** Denmark by the guide as it stood before 2026. */
export const dk: ProfileSource = {
  id: 'dk',
  name: 'Denmark, hygiene guide before 2026',
  place: 'Denmark',
  force: 'advice',
  edition: 'before 2026',
  extends: 'eu',
  notes: [
    'A guide of January 2026 is reported to have changed the figures; it has a profile of its own. Ask which one counts.',
    'Hot holding: the older figure was not read, so none is shipped. The plan’s own figure belongs in a house profile.',
    'Other pairs of temperature and time count where written proof (literature, model, tests) shows them safe.',
    'Chilled food may be out of the refrigerator for at most 3 h (advice, read on a page of 2025); not judged here.',
    'Limits in the Danish order are mostly of the air, not of the food.',
    'How long records are kept: no figure was found.',
  ],
  figures: {
    cooling: [
      guide.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 65],
          to: ['at_or_below', 10],
          within: ['at_most', 240],
          counted: 'from_start',
        },
        {
          section: 'page on cooling',
          where: 'the authority’s page on cooling, a copy without a date',
          speaks_of: 'cooked food that is cooled',
          until: '2026-01-26',
        },
      ),
    ],
    reheat_conventional: route(
      guide.degrees('REHEAT', 'at_or_above', 75, {
        section: 'hygiene guide 27.1',
        speaks_of: 'heated through, unless less is shown safe in writing',
      }),
      0,
    ),
    cook: {
      intact_roast: through,
      injected_or_tenderized: through,
      ground: through,
      sausage_raw: through,
      poultry: through,
      pork_whole: through,
      beef_whole: through,
      fish: through,
      unknown: through,
    },
  },
};
