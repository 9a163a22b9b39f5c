import { fda2013 } from './fda-2013.ts';
import { fda2017 } from './fda-2017.ts';
import { fda2022 } from './fda-2022.ts';
import type { ProfileSource } from './profile.ts';

/** The profiles of the USA, the model code first: a parent stands before the profiles that extend it. */
export const us: readonly ProfileSource[] = [fda2022, fda2017, fda2013];
