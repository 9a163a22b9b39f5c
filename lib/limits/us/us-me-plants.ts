import type { ProfileSource } from '../profile.ts';
import { code } from './code.ts';

const { stage } = code({
  prefix: 'ME',
  edition: 'Me. 01-001 ch. 346',
  checked: 'read',
  where: 'read in a copy of Me. 01-001 ch. 346, sections 3-12, 3-17 and 10-2',
});
const about = { section: 'Me. 01-001 ch. 346', speaks_of: 'cooked meat in a meat plant of the state' };
const warm = { degF: 70, degC: 21 };

export const usMePlants: ProfileSource = {
  id: 'us_me_plants',
  name: 'Maine, meat plants',
  place: 'USA, Maine',
  force: 'law',
  edition: '01-001 ch. 346',
  extends: null,
  notes: ['For meat plants of the state, not for restaurants. Only its cooling is known here.'],
  figures: {
    cooling: [
      stage('stage_1', [{ degF: 140, degC: 60 }, warm, 120], 'from_start', about),
      stage('stage_2', [warm, { degF: 41, degC: 5 }, 240], 'from_previous', about),
    ],
  },
};
