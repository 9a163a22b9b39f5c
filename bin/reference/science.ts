import * as z from 'zod';
import { type BoundReading, boundsByStretch, kMax } from '#lib/science/bounds.ts';
import {
  type Body,
  centreTime,
  firstRoot,
  lacroixCastaigne,
  type Shape,
  slabTimeToSurface,
  theta,
} from '#lib/science/conduction.ts';
import {
  adjustedForNeighbours,
  cusum,
  driftCrossing,
  ewma,
  individuals,
  runRules,
} from '#lib/science/control-charts.ts';
import {
  equalRateAmbient,
  fjFromTwo,
  requiredRate,
  timeTo,
  twoReadingForecast,
  twoReadingRate,
} from '#lib/science/cooling-rate.ts';
import { choiOkos, stillAir } from '#lib/science/food-properties.ts';
import { posterior } from '#lib/science/forecast.ts';
import {
  type Cardinal,
  cereusNoLag,
  growthFromReadings,
  growthOver,
  isSpecies,
  muCardinal,
  muPerfringens,
} from '#lib/science/growth.ts';
import { conservativeD140, dValue, fitDz, lethality } from '#lib/science/lethality.ts';
import { elapsedLocal, exists, localDay } from '#lib/science/local-time.ts';
import { profileFit, threePointAir } from '#lib/science/profile-fit.ts';
import { reheatCore, restBrickCore, restTo160 } from '#lib/science/rest.ts';
import { driftDetect, maxCheckInterval, periodicDetect, ruleOfThree, twoTau } from '#lib/science/sampling.ts';
import {
  boilingAtAltitude,
  boilingAtPressure,
  boilingKelvin,
  guardBand,
  twoPoint,
} from '#lib/science/thermometer.ts';
import { isoOf } from '#shared/time.ts';
import { type Inputs, inputsOf } from './science-inputs.ts';

/** The cases' names for what lib/science answers; null is a function that answers no number. */
type Named = Record<string, unknown> | null;
type Kind = {
  /** Every one is null where the function answers null. */
  outputs: readonly string[];
  answer: (inputs: Inputs) => Named;
};

const kind = (outputs: string, answer: Kind['answer']): Kind => ({ outputs: outputs.split(' '), answer });

const named = <T>(found: T | null, to: (found: T) => Record<string, unknown>): Named =>
  found === null ? null : to(found);

const shapeOf = (inputs: Inputs): Shape => z.enum(['slab', 'cylinder', 'sphere']).parse(inputs.text('shape'));
const material = ({ number }: Inputs) => ({ h: number('h'), k: number('k'), alpha: number('alpha') });
const cardinal = ({ number }: Inputs): Cardinal => ({
  muOpt: number('mu_opt'),
  tMin: number('Tmin'),
  tOpt: number('Topt'),
  tMax: number('Tmax'),
});
const timed = ({ number }: Inputs, place: 1 | 2) => ({ t: number(`t${place}`), y: number(`y${place}`) });
const brick = (inputs: Inputs) => ({
  sides: inputs.numbers('dims'),
  material: material(inputs),
  from: inputs.number('Ti'),
  air: inputs.number('Ta'),
});
const centre = (body: Body, inputs: Inputs): Named =>
  named(
    centreTime(body, material(inputs), {
      from: inputs.number('Ti'),
      air: inputs.number('Ta'),
      target: inputs.number('T_target'),
    }),
    ({ f, j, firstTerm, full }) => ({ f, j, t_first_term: firstTerm, t_full: full }),
  );

const rates: Record<string, Kind> = {
  two_reading_rate: kind('rate f k', ({ number }) =>
    twoReadingRate(number('T1'), number('T2'), number('Ta'), number('dt')),
  ),
  required_rate: kind('stage1 total required', ({ number }) => requiredRate(number('Ta'))),
  equal_rate_ambient: kind('Ta rate', () =>
    named(equalRateAmbient(), ({ air, rate }) => ({ Ta: air, rate })),
  ),
  time_to: kind('hours', ({ number }) => ({
    hours: timeTo(number('T_now'), number('Ta'), number('rate'), number('T_target')),
  })),
  two_reading_forecast: kind('point earliest latest', ({ number }) =>
    twoReadingForecast(
      {
        first: number('y1'),
        second: number('y2'),
        hours: number('dt'),
        air: number('Ta'),
        u: number('u'),
        uAir: number('ua'),
      },
      number('T_target'),
    ),
  ),
  fj_from_two: kind('f j', (inputs) =>
    fjFromTwo(inputs.number('Ti'), inputs.number('Ta'), timed(inputs, 1), timed(inputs, 2)),
  ),
};

const conduction: Record<string, Kind> = {
  first_root: kind('mu1 C1', (inputs) =>
    named(firstRoot(shapeOf(inputs), inputs.number('Bi')), ({ mu1, c1 }) => ({ mu1, C1: c1 })),
  ),
  theta: kind('theta_full theta_first_term', (inputs) =>
    named(
      theta(shapeOf(inputs), inputs.number('Bi'), inputs.number('Fo'), inputs.number('x')),
      ({ full, firstTerm }) => ({ theta_full: full, theta_first_term: firstTerm }),
    ),
  ),
  slab_time_to_surface_T: kind('Fo t', (inputs) =>
    named(
      slabTimeToSurface(inputs.number('L'), material(inputs), {
        from: inputs.number('Ti'),
        air: inputs.number('Ta'),
        target: inputs.number('T_surface'),
      }),
      ({ fo, seconds }) => ({ Fo: fo, t: seconds }),
    ),
  ),
  brick_centre: kind('f j t_first_term t_full', (inputs) =>
    centre({ kind: 'brick', sides: inputs.numbers('dims') }, inputs),
  ),
  finite_cylinder_centre: kind('f j t_full', (inputs) =>
    centre({ kind: 'finite_cylinder', diameter: inputs.number('D'), height: inputs.number('H') }, inputs),
  ),
  lacroix_castaigne: kind('u_slab v_cyl', ({ number }) =>
    named(lacroixCastaigne(number('Bi')), ({ slab, cylinder }) => ({ u_slab: slab, v_cyl: cylinder })),
  ),
  choi_okos: kind('k rho cp alpha', ({ number, fractions }) =>
    choiOkos(fractions('mass_fractions'), number('T')),
  ),
  still_air_h: kind('h_rad h_conv', ({ number }) =>
    named(
      stillAir(number('Ts'), number('Ta'), number('emissivity'), number('D')),
      ({ radiation, convection }) => ({ h_rad: radiation, h_conv: convection }),
    ),
  ),
};

/** A case's names for the times of M1; limits are left out where there is no time. */
const timesOf = (
  target: number,
  { at, lo95, hi95 }: { at: number | null; lo95: unknown; hi95: unknown },
) => ({
  [`t${target}`]: at,
  ...(at === null ? {} : { [`t${target}_lo95`]: lo95, [`t${target}_hi95`]: hi95 }),
});

const forecast: Record<string, Kind> = {
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

const heat: Record<string, Kind> = {
  rest_brick_core: kind('t f j', (inputs) =>
    named(restBrickCore(brick(inputs), inputs.number('T_target')), ({ hours, f, j }) => ({ t: hours, f, j })),
  ),
  reheat_core_165: kind('t within_2h', (inputs) =>
    named(reheatCore(brick(inputs)), ({ hours, withinTwoHours }) => ({
      t: hours,
      within_2h: withinTwoHours,
    })),
  ),
  rest_two_reading_to_160: kind('t160', (inputs) => ({
    t160: restTo160(timed(inputs, 1), timed(inputs, 2), inputs.number('Ta')),
  })),
  fit_Dz: kind('z D140 max_abs_resid rms_resid', ({ number, numbers }) =>
    named(
      fitDz({ T: numbers('T'), minutes: numbers('t'), logReduction: number('log_reduction') }),
      ({ z: perTenfold, d140, maxAbsResidual, rmsResidual }) => ({
        z: perTenfold,
        D140: d140,
        max_abs_resid: maxAbsResidual,
        rms_resid: rmsResidual,
      }),
    ),
  ),
  conservative_D140: kind('D140', ({ number, numbers }) => ({
    D140: conservativeD140(
      { T: numbers('T'), minutes: numbers('t'), logReduction: number('log_reduction') },
      number('z'),
    ),
  })),
  D_value: kind('D t65', ({ number }) =>
    named(dValue(number('D140'), number('z'), number('T')), ({ d, t65 }) => ({ D: d, t65 })),
  ),
  lethality_from_readings: kind('step_lower linear_exact trapezoid', ({ number, numbers, maybeText }) =>
    named(
      lethality({
        t: numbers('t'),
        T: numbers('T'),
        d140: number('D140'),
        z: number('z'),
        floor: number('T_floor'),
        cap: number('T_cap'),
        u: number('u'),
        spot: maybeText('spot') ?? 'core',
      }),
      ({ stepLower, linearExact, trapezoid }) => ({
        step_lower: stepLower,
        linear_exact: linearExact,
        trapezoid,
      }),
    ),
  ),
};

const growth: Record<string, Kind> = {
  mu_cp: kind('mu', ({ number, text }) => {
    const species = text('species');
    return { mu: isSpecies(species) ? muPerfringens(species, number('T')) : null };
  }),
  mu_ctmi: kind('mu', (inputs) => ({ mu: muCardinal(cardinal(inputs), inputs.number('T')) })),
  growth_profile: kind('G_beef G_chicken G_pork nolag_beef nolag_envelope', ({ pairs, maybe, text }) =>
    named(
      growthOver(pairs('points'), text('segment') === 'linear' ? null : maybe('Tinf')),
      ({ beef, chicken, pork, noLagBeef, noLagEnvelope }) => ({
        G_beef: beef,
        G_chicken: chicken,
        G_pork: pork,
        nolag_beef: noLagBeef,
        nolag_envelope: noLagEnvelope,
      }),
    ),
  ),
  growth_from_readings: kind('G_beef_linear nolag_upper_step', ({ number, numbers }) =>
    named(growthFromReadings(numbers('t'), numbers('T'), number('u')), ({ beefLinear, noLagUpperStep }) => ({
      G_beef_linear: beefLinear,
      nolag_upper_step: noLagUpperStep,
    })),
  ),
  bcereus_nolag: kind('nolag', (inputs) => ({
    nolag: cereusNoLag(inputs.number('hours'), cardinal(inputs)),
  })),
};

const bounds: Record<string, Kind> = {
  k_max: kind('k_max', ({ number, numbers }) => ({ k_max: kMax(numbers('dims'), number('alpha')) })),
  below_limit_bounds: kind(
    'shown_safe shown_below inconsistent not_shown below_lower below_upper stretches',
    ({ number, numbers, maybeText }) => {
      const y = numbers('y');
      const t = numbers('t');
      if (t.length !== y.length) throw new Error('inputs.t and inputs.y differ in length');
      const readings = t.map((at, i): BoundReading => ({ t: at, y: y[i] ?? Number.NaN }));
      const assumed = {
        u: number('u'),
        limit: number('L'),
        kMax: number('k_max'),
        coldest: number('Ta'),
        gMax: number('g_max'),
        spot: maybeText('spot') ?? 'core',
      };
      return named(boundsByStretch(readings, assumed), (found) => ({
        shown_safe: found.shownSafe,
        shown_below: found.shownBelow,
        inconsistent: found.inconsistent,
        not_shown: found.notShown,
        below_lower: found.belowLower,
        below_upper: found.belowUpper,
        stretches: found.stretches,
      }));
    },
  ),
};

const charts: Record<string, Kind> = {
  imr: kind('mean mr_bar ucl lcl mr_ucl', ({ numbers }) =>
    named(individuals(numbers('x')), ({ mean, mrBar, ucl, lcl, mrUcl }) => ({
      mean,
      mr_bar: mrBar,
      ucl,
      lcl,
      mr_ucl: mrUcl,
    })),
  ),
  ewma: kind('z ucl lcl out_exact_limits', ({ number, numbers }) =>
    named(
      ewma(numbers('x'), {
        lambda: number('lam'),
        start: number('z0'),
        sigma: number('sigma'),
        reach: number('L'),
      }),
      ({ z: smooth, ucl, lcl, outExactLimits }) => ({
        z: smooth,
        ucl,
        lcl,
        out_exact_limits: outExactLimits,
      }),
    ),
  ),
  cusum: kind('s_hi s_lo signals', ({ number, numbers }) =>
    named(
      cusum(numbers('x'), { target: number('target'), k: number('k'), h: number('h') }),
      ({ high, low, signals }) => ({ s_hi: high, s_lo: low, signals }),
    ),
  ),
  nelson: kind('rule1 rule2 rule3 rule5 rule6', ({ number, numbers }) =>
    runRules(numbers('x'), number('mean'), number('sigma')),
  ),
  ar1_adjust: kind('r1 sigma_mr sigma_adj lcl_naive lcl_adj', ({ numbers }) =>
    named(adjustedForNeighbours(numbers('x')), ({ r1, sigmaMr, sigmaAdj, lclNaive, lclAdj }) => ({
      r1,
      sigma_mr: sigmaMr,
      sigma_adj: sigmaAdj,
      lcl_naive: lclNaive,
      lcl_adj: lclAdj,
    })),
  ),
  drift_crossing: kind('slope slope_se t_cross', ({ number, numbers }) =>
    named(driftCrossing(numbers('t'), numbers('y'), number('L')), ({ slope, slopeSe, tCross }) => ({
      slope,
      slope_se: slopeSe,
      t_cross: tCross,
    })),
  ),
};

const thermometer: Record<string, Kind> = {
  boiling_point: kind('p T_C T_F', ({ number }) =>
    named(boilingAtAltitude(number('altitude')), ({ pascal, celsius, fahrenheit }) => ({
      p: pascal,
      T_C: celsius,
      T_F: fahrenheit,
    })),
  ),
  tsat_if97: kind('T_K', ({ number }) => ({ T_K: boilingKelvin(number('p')) })),
  tsat_pressure: kind('T_C T_F', ({ number }) =>
    named(boilingAtPressure(number('p')), ({ celsius, fahrenheit }) => ({ T_C: celsius, T_F: fahrenheit })),
  ),
  two_point: kind('gain offset T_corr u', ({ number }) =>
    named(
      twoPoint(
        {
          ice: number('R_ice'),
          boiling: number('R_boil'),
          boils: number('T_boil'),
          uIce: number('u_ice'),
          uBoil: number('u_boil'),
          uRead: number('u_read'),
        },
        number('R'),
      ),
      ({ gain, offset, value, u }) => ({ gain, offset, T_corr: value, u }),
    ),
  ),
  guard_band: kind('p_conform decision acceptance_limit A95', ({ number }) =>
    named(
      guardBand(number('y'), number('L'), number('a'), number('u')),
      ({ pConform, decision, acceptanceLimit, a95 }) => ({
        p_conform: pConform,
        decision,
        acceptance_limit: acceptanceLimit,
        A95: a95,
      }),
    ),
  ),
};

const sampling: Record<string, Kind> = {
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

const clocks: Record<string, Kind> = {
  elapsed_local: kind('start_utc end_utc elapsed_h wall_clock_difference_h', ({ text, maybe }) =>
    named(
      elapsedLocal(
        text('zone'),
        { local: text('start'), fold: maybe('start_fold') ?? 0 },
        { local: text('end'), fold: maybe('end_fold') ?? 0 },
      ),
      ({ startMs, endMs, hours, wallClockHours }) => ({
        start_utc: isoOf(startMs),
        end_utc: isoOf(endMs),
        elapsed_h: hours,
        wall_clock_difference_h: wallClockHours,
      }),
    ),
  ),
  local_day: kind('start_utc end_utc hours', ({ text }) =>
    named(localDay(text('zone'), text('date')), ({ startMs, endMs, hours }) => ({
      start_utc: isoOf(startMs),
      end_utc: isoOf(endMs),
      hours,
    })),
  ),
  nonexistent_local: kind('exists', ({ text }) => ({ exists: exists(text('zone'), text('local')) })),
};

const kinds: Record<string, Kind> = {
  ...rates,
  ...conduction,
  ...forecast,
  ...heat,
  ...growth,
  ...bounds,
  ...charts,
  ...thermometer,
  ...sampling,
  ...clocks,
};

/** The answer of lib/science to a case of the kind; null when the kind is not one of its own. Throws on other shapes. */
export function scienceAnswer(name: string, inputs: unknown): Record<string, unknown> | null {
  const found = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
  if (found === undefined) return null;
  const none = Object.fromEntries(found.outputs.map((output) => [output, null]));
  return found.answer(inputsOf(inputs)) ?? none;
}

const expectedValues = z.record(z.string(), z.looseObject({ value: z.unknown() }));

/** `{name: {value, unit}}` as a case of lib/science expects, without the units. Throws when a name has no value. */
export const valuesOf = (expected: unknown): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(expectedValues.parse(expected)).map(([name, { value }]) => [name, value]),
  );
