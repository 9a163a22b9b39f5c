import type { ProfileSource } from '../profile.ts';
import { scheduleFour } from './uk-schedule-4.ts';

const read = { checked: 'read' as const, where: 'the Welsh regulations' };

/** Wales: the one of the three sister texts whose paragraphs on hot food were read. */
export const ukWales: ProfileSource = {
  id: 'uk_wales',
  name: 'Wales, Food Hygiene Regulations 2006',
  place: 'United Kingdom: Wales',
  force: 'law',
  edition: 'WSI 2006/31',
  extends: null,
  ...scheduleFour('UK-WAL', 'WSI 2006/31', {
    para_2: read,
    para_6: read,
    para_7: { checked: 'read', where: 'the Welsh regulations, version of 30 July 2012' },
  }),
};
