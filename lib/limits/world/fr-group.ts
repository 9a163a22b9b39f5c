import type { ProfileSource } from '../profile.ts';
import { frenchFigures } from './fr.ts';

/** France, schools, staff canteens and hospitals: the same figures, binding. */
export const frGroup: ProfileSource = {
  id: 'fr_group',
  name: 'France, group catering',
  place: 'France',
  force: 'law',
  edition: 'orders of 21 December 2009 and 8 October 2013',
  extends: 'fr',
  notes: [
    'For schools, staff canteens and hospitals. How far it reaches a restaurant that delivers or caters for events is an open question.',
    'A dish eaten cold may be out of the 0 to 3 °C enclosure for at most 2 h before it is eaten, and at 10 °C or below; that is not judged here.',
    'Another rate of cooling or temperature of serving is allowed where a validated hazard analysis shows it safe.',
  ],
  figures: frenchFigures('FR-GR', 'law'),
};
