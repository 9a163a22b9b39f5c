import { fda2017 } from '../fda-2017.ts';
import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const va = code({
  prefix: 'VA',
  edition: '12VAC5-421, effective 2021',
  checked: 'read',
  where: 'read in the Cornell copy of the 2017 text, effective 2021',
});
const { figures } = fda2017;
const ground = va.restated(figures.cook.ground, 'COOK-2', { section: '12VAC5-421-700' });
const poultry = va.restated(figures.cook.poultry, 'COOK-3', { section: '12VAC5-421-700' });

export const usVa: ProfileSource = {
  id: 'us_va',
  name: 'Virginia',
  place: 'USA, Virginia',
  force: 'law',
  edition: '12VAC5-421, effective 2021',
  extends: 'fda_2017',
  notes: ['Holding, cooling and reheating are FDA’s figures.'],
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
  },
};
