import { fda2017 } from '../fda-2017.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const sc = code({
  prefix: 'SC',
  edition: 'S.C. Code Regs. 61-25',
  checked: 'read',
  where: 'read in the Casetext print copy, current October 2024',
});
const { figures } = fda2017;
const ground = sc.restated(figures.cook.ground, 'COOK-2', { section: 'S.C. Regs. 61-25, 3-401.11(A)' });
const poultry = sc.restated(figures.cook.poultry, 'COOK-3', { section: 'S.C. Regs. 61-25, 3-401.11(A)' });

export const usSc: ProfileSource = {
  id: 'us_sc',
  name: 'South Carolina',
  place: 'USA, South Carolina',
  force: 'law',
  edition: 'S.C. Code Regs. 61-25',
  extends: 'fda_2017',
  notes: [
    'The subsection on holding and cooling was not in the copy: those figures are FDA’s.',
    'Barbecue pits, 9-7: each pit room has at least one food thermometer that can be calibrated and suits the food.',
  ],
  figures: {
    reheat_within: sc.restated(figures.reheat_within, 'REHEAT-TIME', {
      section: 'S.C. Regs. 61-25, 3-403.11',
    }),
    reheat_conventional: sc.route(figures.reheat_conventional, 'REHEAT', {
      section: 'S.C. Regs. 61-25, 3-403.11',
    }),
    reheat_microwave: sc.route(figures.reheat_microwave, 'REHEAT-MICRO', {
      section: 'S.C. Regs. 61-25, 3-403.11',
    }),
    reheat_commercial: sc.route(figures.reheat_commercial, 'REHEAT-COMMERCIAL', {
      section: 'S.C. Regs. 61-25, 3-403.11',
    }),
    cook: {
      ...figures.cook,
      ground,
      injected_or_tenderized: ground,
      sausage_raw: ground,
      egg: ground,
      poultry,
      unknown: poultry,
    },
    roast_chart: sc.restated(figures.roast_chart, 'COOK-ROAST', { section: 'S.C. Regs. 61-25, 3-401.11(B)' }),
    roast_oven: sc.restated(figures.roast_oven, 'COOK-OVEN', { section: 'S.C. Regs. 61-25, 3-401.11(B)' }),
  },
};
