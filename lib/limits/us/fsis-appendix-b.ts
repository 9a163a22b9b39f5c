import type { ProfileSource } from '../profile.ts';
import { code, onlyF } from './code.ts';

const { stage } = code({
  prefix: 'FSIS-B1',
  force: 'guide',
  edition: 'FSIS Appendix B, 1999',
  checked: 'second_hand',
  where: 'a state university’s temperature sheet of July 1999 and a trade article; 2021 the same from memory',
});
const about = { section: 'FSIS Appendix B option 1', speaks_of: 'any cooked meat or poultry product' };

export const fsisAppendixB: ProfileSource = {
  id: 'fsis_appendix_b',
  name: 'FSIS Appendix B, option 1',
  place: 'USA, FSIS',
  force: 'guide',
  edition: '1999',
  extends: null,
  notes: ['For plants under inspection. Cooling is continuous; 130 to 80 °F is the dangerous range.'],
  figures: {
    cooling: [
      stage('stage_1', [onlyF(130), onlyF(80), 90], 'from_start', about),
      stage('stage_2', [onlyF(80), onlyF(40), 300], 'from_previous', about),
    ],
  },
};
