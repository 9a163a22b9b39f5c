import type { ProfileSource } from '../profile.ts';

/** Italy: no figure since 2021. */
export const it: ProfileSource = {
  id: 'it',
  name: 'Italy, Regulation (EC) 852/2004 alone',
  place: 'Italy',
  force: 'law',
  edition: 'as of Legislative Decree 27/2021, changed by Decree-Law 42/2021',
  extends: 'eu',
  notes: [
    'No figure since 2021. Art. 31 of Presidential Decree 327/1980 asked 60 to 65 °C; two legal commentators (December 2022 and January 2023, second hand) read it as repealed.',
    'The kitchen’s own plan sets the figure; many still write 60 to 65 °C. A house profile holds it.',
    'Rules of the regions may differ and were not looked at.',
  ],
  figures: {},
};
