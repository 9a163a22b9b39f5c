import * as z from 'zod';
import { posterior } from '#lib/science/forecast.ts';
import { profileFit, threePointAir } from '#lib/science/profile-fit.ts';
import { type Kind, kind, named } from './kind.ts';

/** A case's names for the times of M1; limits are left out where there is no time. */
const timesOf = (
  target: number,
  { at, lo95, hi95 }: { at: number | null; lo95: unknown; hi95: unknown },
) => ({
  [`t${target}`]: at,
  ...(at === null ? {} : { [`t${target}_lo95`]: lo95, [`t${target}_hi95`]: hi95 }),
});

/** Forecasts from several readings (file 03). */
export const forecast: Record<string, Kind> = {
  m1_profile: kind('k A rss t70 t41', ({ number, numbers }) =>
    named(
      profileFit({ t: numbers('t'), y: numbers('y') }, number('Ta'), number('sigma'), [70, 41]),
      ({ k, A, rss, times: [at70, at41] }) => ({
        k,
        A,
        rss,
        ...(at70 === undefined ? {} : timesOf(70, at70)),
        ...(at41 === undefined ? {} : timesOf(41, at41)),
      }),
    ),
  ),
  three_point_ambient: kind('Ta signal_to_noise identifiable', ({ number, numbers }) => {
    const [a, b, c] = z.tuple([z.number(), z.number(), z.number()]).parse(numbers('y'));
    return named(threePointAir(a, b, c, number('u')), ({ air, signalToNoise, identifiable }) => ({
      Ta: air,
      signal_to_noise: signalToNoise,
      identifiable,
    }));
  }),
  m2_posterior: kind('t70_q05 t70_q50 t70_q95 t41_q05 t41_q50 t41_q95', ({ number, numbers }) =>
    named(
      posterior(
        { t: numbers('t'), y: numbers('y') },
        { air: number('Ta'), s: number('s'), sModel: number('s_model'), sAir: number('s_Ta') },
        [70, 41],
        { rates: 800, airs: 7 },
      ),
      ({ times: [at70, at41] }) => ({
        t70_q05: at70?.q05,
        t70_q50: at70?.q50,
        t70_q95: at70?.q95,
        t41_q05: at41?.q05,
        t41_q50: at41?.q50,
        t41_q95: at41?.q95,
      }),
    ),
  ),
};
