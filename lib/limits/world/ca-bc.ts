import type { ProfileSource } from '../profile.ts';

/** British Columbia: a duty to have a plan; its temperatures were not read. */
export const caBc: ProfileSource = {
  id: 'ca_bc',
  name: 'British Columbia, Regulation 210/99',
  place: 'Canada: British Columbia',
  force: 'law',
  edition: 'B.C. Reg. 210/99',
  extends: null,
  notes: [
    's. 23 (read): procedures in writing, with the critical points, their limits, and what is done when one is missed.',
    'Why there is no figure: the section with the temperatures was not read. Set the limits of your written procedures in a house profile.',
  ],
  figures: {},
};
