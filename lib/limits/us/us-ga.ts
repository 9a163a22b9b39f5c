import { fda2017 } from '../fda-2017.ts';
import { fda2022 } from '../fda-2022.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const ga = code({
  prefix: 'GA',
  edition: 'Ga. Rules 40-7-1 and 511-6-1, 2024',
  checked: 'read',
  where: 'read in the Casetext copy of Ga. Rules 40-7-1-.11, November 2024',
});
const { figures } = fda2017;
const ground = ga.restated(figures.cook.ground, 'COOK-2', { section: 'Ga. Rules 40-7-1-.11' });
const poultry = ga.restated(figures.cook.poultry, 'COOK-3', { section: 'Ga. Rules 40-7-1-.11' });
const four = fda2022.figures.time_control.four_hours;
const rule = {
  section: 'Ga. Rules 511-6-1-.04',
  checked: 'second_hand',
  where: 'quoted in a public inspection report of June 2026',
} as const;
const starts = four.starts.map((start, index) => ({
  ...start,
  figure: ga.restated(start.figure, `TPHC-4-START-${index + 1}`, rule),
  ...('stays' in start && start.stays
    ? { stays: ga.restated(start.stays, `TPHC-4-STAYS-${index + 1}`, rule) }
    : {}),
}));

export const usGa: ProfileSource = {
  id: 'us_ga',
  name: 'Georgia',
  place: 'USA, Georgia',
  force: 'law',
  edition: 'Ga. Rules 40-7-1 and 511-6-1, 2024',
  extends: 'fda_2017',
  notes: [
    'Stores (40-7-1-.11) have the 2017 text; restaurants (511-6-1) a time rule with the starts that the 2022 edition added. Cooling is FDA’s.',
  ],
  figures: {
    cook: {
      ...figures.cook,
      ground,
      injected_or_tenderized: ground,
      sausage_raw: ground,
      egg: ground,
      poultry,
      unknown: poultry,
    },
    time_control: { ...figures.time_control, four_hours: { ...four, starts } },
  },
};
