import * as z from 'zod';
import {
  type Body,
  centreTime,
  firstRoot,
  lacroixCastaigne,
  type Shape,
  slabTimeToSurface,
  theta,
} from '#lib/science/conduction.ts';
import { choiOkos, stillAir } from '#lib/science/food-properties.ts';
import type { Inputs } from './inputs.ts';
import { type Kind, kind, material, type Named, named } from './kind.ts';

const shapeOf = (inputs: Inputs): Shape => z.enum(['slab', 'cylinder', 'sphere']).parse(inputs.text('shape'));

const centre = (body: Body, inputs: Inputs): Named =>
  named(
    centreTime(body, material(inputs), {
      from: inputs.number('Ti'),
      air: inputs.number('Ta'),
      target: inputs.number('T_target'),
    }),
    ({ f, j, firstTerm, full }) => ({ f, j, t_first_term: firstTerm, t_full: full }),
  );

/** Conduction in slabs, bricks and cylinders (file 02). */
export const conduction: Record<string, Kind> = {
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
