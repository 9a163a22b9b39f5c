import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

const law = published({
  prefix: 'UK-SCT',
  edition: 'SSI 2006/3',
  checked: 'read',
  where: 'the Scottish regulations as made',
  force: 'law',
});
const proof = 'an exception in the text; the business has to show it';

/** Scotland: above 63 °C, no two hours, and a reheating figure of its own. */
export const ukScotland: ProfileSource = {
  id: 'uk_scotland',
  name: 'Scotland, Food Hygiene Regulations 2006',
  place: 'United Kingdom: Scotland',
  force: 'law',
  edition: 'SSI 2006/3',
  extends: null,
  notes: [
    'The law says above 63 °C: exactly 63 does not keep it, though advice pages print "63 or above".',
    'There is no two-hour rule and no 8 °C rule here. The exceptions for food exposed for sale or conveniently at hand would hardly cover a closed kitchen at night.',
    'Reheating to 82 °C: a business may prove that a food would have been spoilt by it. Smoked meat that is reheated to less needs this in writing, product by product. It softens no answer.',
    'Cooling: no figure in law, only as fast as it can be under clean conditions.',
    'How long records are kept: no figure was found.',
  ],
  figures: {
    hot_hold: law.degrees('HOT', 'above', 63, {
      section: 'SSI 2006/3 Sch. 4 para 2',
      speaks_of: 'food on food premises that is not kept in a refrigerator or a cool ventilated place',
    }),
    hot_hold_defences: [
      law.defence('HOT-EXC-A', 'Being prepared for sale', null, {
        section: 'SSI 2006/3 Sch. 4 para 2(2)',
        speaks_of: proof,
      }),
      law.defence('HOT-EXC-B', 'Exposed for sale, or sold', null, {
        section: 'SSI 2006/3 Sch. 4 para 2(2)',
        speaks_of: proof,
      }),
      law.defence('HOT-EXC-C', 'Being cooled as fast as possible, cleanly, right after cooking', null, {
        section: 'SSI 2006/3 Sch. 4 para 2(2)',
        speaks_of: proof,
      }),
      law.defence('HOT-EXC-D', 'Kept otherwise within reason, to be at hand for sale on the premises', null, {
        section: 'SSI 2006/3 Sch. 4 para 2(2)',
        speaks_of: proof,
      }),
    ],
    reheat_conventional: route(
      law.degrees('REHEAT', 'at_or_above', 82, {
        section: 'SSI 2006/3 Sch. 4 para 3',
        checked: 'second_hand',
        where:
          'the copy of para 3 that was read breaks off; figure and whole wording were read in the regulations of 1995 (SI 1995/2200 reg. 14)',
        speaks_of: 'food heated by the business and heated again before service or sale',
      }),
      0,
    ),
  },
};
