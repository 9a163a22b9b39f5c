import type { Profile } from '#lib/limits/profile.ts';
import { cooking } from './cross-cook.ts';
import { cooling, untimed } from './cross-cooling.ts';
import { days, thermometers } from './cross-days.ts';
import { holding } from './cross-hold.ts';
import { reheating } from './cross-reheat.ts';
import { timed } from './cross-time.ts';
import type { Case } from './crossing.ts';

/**
 * Every boundary of every figure of a profile that a small record can cross.
 * @param judged the profile that the judge is given, where it is to be another one
 */
export const casesOf = (published: Profile, judged: Profile = published): Case[] =>
  [holding, cooling, untimed, reheating, cooking, timed, days, thermometers].flatMap((cases) =>
    cases(published, judged),
  );
