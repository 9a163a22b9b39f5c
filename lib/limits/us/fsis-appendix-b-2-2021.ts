import type { ProfileSource } from '../profile.ts';
import { code, onlyF } from './code.ts';

const { stage } = code({
  prefix: 'FSIS-B2-21',
  force: 'guide',
  edition: 'FSIS Appendix B, 2021',
  checked: 'memory',
  where: 'the 2021 text was not read; only the option of 1999 was seen, second hand',
});
const about = { section: 'FSIS Appendix B option 2', speaks_of: 'cooked meat and poultry' };

export const fsisAppendixB2Of2021: ProfileSource = {
  id: 'fsis_appendix_b_2_2021',
  name: 'FSIS Appendix B, option 2 (2021)',
  place: 'USA, FSIS',
  force: 'guide',
  edition: '2021',
  extends: null,
  notes: [
    'For plants under inspection. Chilling begins within 90 min of the end of cooking and goes on to 40 °F before packing; neither is judged here.',
    'Large pieces that are not intact stay a scientific gap.',
  ],
  figures: {
    cooling: [
      stage('stage_1', [onlyF(120), onlyF(80), 60], 'from_start', about),
      stage('stage_2', [onlyF(80), onlyF(55), 300], 'from_previous', about),
    ],
  },
};
