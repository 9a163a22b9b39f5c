import type { ProfileSource } from '../profile.ts';
import { published } from './published.ts';

const fsai = published({
  prefix: 'IE',
  edition: 'page of the Food Safety Authority of Ireland, 30 November 2022',
  checked: 'read',
  where: 'the authority’s page',
  force: 'advice',
});

/** Ireland: cold holding and how long records are kept; nothing else was read. */
export const ie: ProfileSource = {
  id: 'ie',
  name: 'Ireland, Food Safety Authority of Ireland',
  place: 'Ireland',
  force: 'advice',
  edition: '30 November 2022',
  extends: 'eu',
  notes: [
    'Hot holding, cooking, reheating and cooling: no page with the figures was read, so none are shipped. Set your plan’s own in a house profile, and ask your officer.',
    'Of the Irish standard for catering the edition of 2007 is listed as superseded since 13 December 2015 (read).',
    'Whether a later text changed how long records are kept was not looked at.',
  ],
  figures: {
    cold_hold: fsai.degrees('COLD', 'at_or_below', 5, {
      section: 'page on temperature control',
      speaks_of: 'chilled food, 0 to 5 °C',
    }),
    retention: fsai.retention(
      'KEEP',
      '3 months after sale for food eaten at once; with a use-by date 3 months after it; with a best-before date 1 year after it',
      { section: 'S.I. 369/2006', force: 'law', speaks_of: 'records of a food business' },
    ),
  },
};
