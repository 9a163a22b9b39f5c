import type { ProfileSource } from '../profile.ts';
import { published, route } from './published.ts';

/** The figures of the two orders; the cooling and reheating ones bind group catering and guide a restaurant. */
export function frenchFigures(prefix: string, force: 'law' | 'guide'): ProfileSource['figures'] {
  const order = published({
    prefix,
    edition: 'order of 8 October 2013',
    checked: 'read',
    where: 'the order of 8 October 2013, Annex II; that of 21 December 2009 on a public-health law site',
    force,
  });
  return {
    cooling: [
      order.stage(
        'COOL',
        'total',
        {
          from: ['at_or_above', 63],
          to: ['at_or_below', 10],
          within: ['at_most', 120],
          counted: 'from_start',
        },
        {
          section: 'Arrete 8 Oct 2013 Annex II',
          speaks_of: 'the core: not more than two hours between 63 and 10 °C',
        },
      ),
    ],
    reheat_from: order.degrees('REHEAT-FROM', 'at_or_below', 10, {
      section: 'Arrete 8 Oct 2013 Annex II point 3',
      speaks_of: 'where the hour of reheating begins',
    }),
    reheat_within: order.minutes('REHEAT-TIME', 'at_most', 60, {
      section: 'Arrete 8 Oct 2013 Annex II point 3',
      speaks_of: 'not more than an hour between 10 °C and the temperature of serving',
    }),
    reheat_conventional: route(
      order.degrees('REHEAT', 'at_or_above', 63, {
        section: 'Arrete 8 Oct 2013 Annex II point 3',
        speaks_of: 'the temperature of serving; eaten on the day on which it is first reheated',
      }),
      0,
    ),
  };
}

const hot = published({
  prefix: 'FR',
  edition: 'order of 21 December 2009',
  checked: 'second_hand',
  where: 'commentaries, and a leaflet of a department of 2014; Annex I itself was not seen',
  force: 'law',
});

/** France, a restaurant. */
export const fr: ProfileSource = {
  id: 'fr',
  name: 'France, orders of 21 December 2009 and 8 October 2013',
  place: 'France',
  force: 'law',
  edition: 'orders of 21 December 2009 and 8 October 2013',
  extends: 'eu',
  notes: [
    'The annexes on cooling and reheating are headed group catering. A restaurant uses them through its guide of good practice and its own plan: they are printed as guide here, and as law in the profile for group catering.',
    'Another rate of cooling or temperature of serving is allowed where a validated hazard analysis shows it safe; that is not judged here.',
    'After cooling, 0 to 3 °C is asked of the enclosure. That is air, so no food figure for cold holding is given.',
    '65 °C is from an order of 1974 that no longer counts.',
  ],
  figures: {
    hot_hold: hot.degrees('HOT', 'at_or_above', 63, {
      section: 'Arrete 21 Dec 2009 Annex I',
      speaks_of: 'cooked dishes delivered or kept hot, from the end of the last heating to the guest',
    }),
    ...frenchFigures('FR', 'guide'),
  },
};
