import { driftDetect, maxCheckInterval, periodicDetect, ruleOfThree, twoTau } from '#lib/science/sampling.ts';
import { type Kind, kind, named } from './kind.ts';

/** How often to look (file 10). */
export const sampling: Record<string, Kind> = {
  max_check_interval: kind('t_limit t_alarm max_interval', ({ number }) =>
    named(
      maxCheckInterval({
        from: number('T0'),
        air: number('Ta'),
        tau: number('tau'),
        limit: number('L'),
        u: number('u'),
        allowed: number('M'),
      }),
      ({ tLimit, tAlarm, maxInterval }) => ({ t_limit: tLimit, t_alarm: tAlarm, max_interval: maxInterval }),
    ),
  ),
  periodic_detect: kind('p_one p_at_least_one p_random', ({ number }) =>
    named(
      periodicDetect(number('d'), number('interval'), number('events')),
      ({ one, atLeastOne, random }) => ({ p_one: one, p_at_least_one: atLeastOne, p_random: random }),
    ),
  ),
  rule_of_three: kind('p_upper approx3n', ({ number }) =>
    named(ruleOfThree(number('n'), number('alpha')), ({ upper, approx }) => ({
      p_upper: upper,
      approx3n: approx,
    })),
  ),
  two_tau: kind('t_food_limit T_food_1h T_air_1h', ({ number }) =>
    named(
      twoTau({
        from: number('T0'),
        air: number('Ta'),
        tauAir: number('tau_air'),
        tauFood: number('tau_food'),
        limit: number('L'),
      }),
      ({ tFoodLimit, foodAfter1h, airAfter1h }) => ({
        t_food_limit: tFoodLimit,
        T_food_1h: foodAfter1h,
        T_air_1h: airAfter1h,
      }),
    ),
  ),
  drift_detect: kind('warn_limit t_warn_worst t_limit margin', ({ number }) =>
    named(
      driftDetect({
        mean: number('mean'),
        sigma: number('sigma'),
        k: number('k'),
        drift: number('drift'),
        interval: number('interval'),
        limit: number('L'),
      }),
      ({ warnLimit, tWarnWorst, tLimit, margin }) => ({
        warn_limit: warnLimit,
        t_warn_worst: tWarnWorst,
        t_limit: tLimit,
        margin,
      }),
    ),
  ),
};
