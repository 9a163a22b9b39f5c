import {
  boilingAtAltitude,
  boilingAtPressure,
  boilingKelvin,
  guardBand,
  twoPoint,
} from '#lib/science/thermometer.ts';
import { type Kind, kind, named } from './kind.ts';

/** Thermometer (file 09). */
export const thermometer: Record<string, Kind> = {
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
