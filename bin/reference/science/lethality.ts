import { conservativeD140, dValue, fitDz, lethality } from '#lib/science/lethality.ts';
import { type Kind, kind, named } from './kind.ts';

/** Lethality (file 05). */
export const lethal: Record<string, Kind> = {
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
