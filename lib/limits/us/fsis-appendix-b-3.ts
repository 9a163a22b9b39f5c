import type { ProfileSource } from '../profile.ts';
import { code, onlyF } from './code.ts';

const { stage } = code({
  prefix: 'FSIS-B3',
  force: 'guide',
  edition: 'FSIS Appendix B',
  checked: 'memory',
  where: 'from memory; a state university’s sheet of July 1999 prints 40 °F for the end of the 10 h',
});
const about = {
  section: 'FSIS Appendix B option 3',
  speaks_of: 'cured products with at least 100 ppm ingoing nitrite',
};

export const fsisAppendixB3: ProfileSource = {
  id: 'fsis_appendix_b_3',
  name: 'FSIS Appendix B, option 3 (cured)',
  place: 'USA, FSIS',
  force: 'guide',
  edition: '1999 and 2021, not told apart',
  extends: null,
  notes: [
    'For plants under inspection and for cured products only; the 2021 text also asks for erythorbate or ascorbate, from memory.',
  ],
  figures: {
    cooling: [
      stage('stage_1', [onlyF(130), onlyF(80), 300], 'from_start', about),
      stage('stage_2', [onlyF(80), onlyF(45), 600], 'from_previous', {
        ...about,
        disputed: 'one copy prints 40 °F for the end of the 10 h',
      }),
    ],
  },
};
