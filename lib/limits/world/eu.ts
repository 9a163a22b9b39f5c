import type { ProfileSource } from '../profile.ts';

/** The European Union: a duty without a number. */
export const eu: ProfileSource = {
  id: 'eu',
  name: 'European Union, Regulation (EC) 852/2004',
  place: 'European Union',
  force: 'law',
  edition: 'consolidated text of 24 March 2021',
  extends: null,
  notes: [
    'No figure in the text: it never breaks on a number. The kitchen’s own plan has to set a limit and show that it was met; a house profile holds it. National law may add figures.',
    'Annex II ch. IX point 5 (read): food in which germs can grow is not kept at temperatures that could make it a risk; short times out of control are allowed for handling where no risk follows.',
    'Annex II ch. IX point 6 (read): food to be kept or served cold is cooled as fast as possible after the last heating.',
    'Annex II ch. III point 2(g) and ch. IV point 7 (read): mobile premises and transport need the means to keep and watch the temperature.',
    'Art. 5(1), (2) and (4)(a) (read): a written procedure with critical limits, watching, corrections and checking, records in measure with the business, and proof for the authority in the form that it asks.',
    'Thermometers: no class of accuracy for hot holding was found.',
  ],
  figures: {},
};
