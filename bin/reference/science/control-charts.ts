import {
  adjustedForNeighbours,
  cusum,
  driftCrossing,
  ewma,
  individuals,
  runRules,
} from '#lib/science/control-charts.ts';
import { type Kind, kind, named } from './kind.ts';

/** Control charts (file 08). */
export const charts: Record<string, Kind> = {
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
