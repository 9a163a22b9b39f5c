import {
  type Cardinal,
  cereusNoLag,
  growthFromReadings,
  growthOver,
  isSpecies,
  muCardinal,
  muPerfringens,
} from '#lib/science/growth.ts';
import type { Inputs } from './inputs.ts';
import { type Kind, kind, named } from './kind.ts';

const cardinal = ({ number }: Inputs): Cardinal => ({
  muOpt: number('mu_opt'),
  tMin: number('Tmin'),
  tOpt: number('Topt'),
  tMax: number('Tmax'),
});

/** Growth (file 06). */
export const growth: Record<string, Kind> = {
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
