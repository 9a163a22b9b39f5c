import type { ProfileSource } from '../profile.ts';
import { code, onlyF } from './code.ts';

const { stage } = code({
  prefix: 'FSIS-B2-99',
  force: 'guide',
  edition: 'FSIS Appendix B, 1999',
  checked: 'second_hand',
  where: 'a university extension’s note of March 2020 and a state university’s sheet of July 1999',
});

export const fsisAppendixB2Of1999: ProfileSource = {
  id: 'fsis_appendix_b_2_1999',
  name: 'FSIS Appendix B, option 2 (1999)',
  place: 'USA, FSIS',
  force: 'guide',
  edition: '1999',
  extends: null,
  notes: [
    'For plants under inspection. Chilling begins within 90 min of the end of cooking and goes on to 40 °F before packing; neither is judged here.',
    'More than 1 h between 120 and 80 °F makes it less certain that the aim is met; the 2021 edition makes it a limit.',
  ],
  figures: {
    cooling: [
      stage('total', [onlyF(120), onlyF(55), 360], 'from_start', {
        section: 'FSIS Appendix B option 2',
        speaks_of: 'cooked meat and poultry: 120 to 55 °F',
      }),
    ],
  },
};
