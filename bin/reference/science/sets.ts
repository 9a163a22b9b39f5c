import * as z from 'zod';
import { type Body, type Cooling, coolingOf } from '#lib/science/conduction.ts';
import { outlook, posterior, type Quantiles } from '#lib/science/forecast.ts';
import { bisect } from '#lib/science/root.ts';
import type { Difference } from '../compare.ts';

/** A set of readings of a synthetic food, what it truly did, and M2's answer for its first n readings. */
const quantiles = z.tuple([z.number().nullable(), z.number().nullable(), z.number().nullable()]);
const shared = {
  k: z.number(),
  alpha: z.number(),
  h: z.number(),
  Ti: z.number(),
  Ta: z.number(),
  pos: z.number().optional(),
  tmax_h: z.number(),
};
const truthModel = z.discriminatedUnion('geom', [
  z.looseObject({ geom: z.literal('slab'), L: z.number(), ...shared }),
  z.looseObject({
    geom: z.literal('slab_fv'),
    L: z.number(),
    events: z.array(z.tuple([z.number(), z.number(), z.number()])).optional(),
    stir: z.array(z.number()).optional(),
    ...shared,
  }),
  z.looseObject({ geom: z.literal('brick'), dims: z.array(z.number()), ...shared }),
  z.looseObject({ geom: z.literal('fincyl'), D: z.number(), H: z.number(), ...shared }),
]);
type TruthModel = z.infer<typeof truthModel>;

export const scienceSet = z.looseObject({
  id: z.string(),
  truth_model: truthModel,
  t_h: z.array(z.number()),
  readings_F: z.array(z.number()),
  noise_free_F: z.array(z.number()),
  truth: z.record(z.string(), z.number().nullable()),
  reference_m2_q05_q50_q95: z.array(z.object({ n: z.int() }).catchall(quantiles)).default([]),
});
type ScienceSet = z.infer<typeof scienceSet>;

/** The grid of the sets, and the uncertainties of all of them, °F. */
const GRID = { rates: 300, airs: 5 };
const known = (air: number) => ({ air, s: 1, sModel: 1, sAir: 1 });
/** Docs: each quantile within 2 % (a neighbouring node), noise-free readings within 0.002 °F. */
const NEAR = 0.02;
const NOISE_FREE = 0.002;
/** True times are printed to four decimals. */
const TRUE_TIME = 1e-3;

const bodyOf = (model: TruthModel): Body =>
  model.geom === 'brick'
    ? { kind: 'brick', sides: model.dims }
    : model.geom === 'fincyl'
      ? { kind: 'finite_cylinder', diameter: model.D, height: model.H }
      : { kind: 'slab', halfThickness: model.L };

const targetOf = (name: string): number => Number(/^t(\d+(?:\.\d+)?)/.exec(name)?.[1] ?? Number.NaN);

const first = ({ t_h: t, readings_F: y }: ScienceSet, n: number) => ({ t: t.slice(0, n), y: y.slice(0, n) });

function near(expected: number | null, got: number | null): boolean {
  if (expected === null || got === null) return expected === got;
  return Math.abs(got - expected) <= (NEAR + 5e-8) * Math.abs(expected);
}

function quantileDifferences(set: ScienceSet): Difference[] {
  return set.reference_m2_q05_q50_q95.flatMap(({ n, ...rows }) => {
    const names = Object.keys(rows);
    const found = posterior(first(set, n), known(set.truth_model.Ta), names.map(targetOf), GRID);
    return names.flatMap((name, place): Difference[] => {
      const at = `n ${n}.${name}`;
      const times: Quantiles | undefined = found?.times[place];
      const expected = rows[name];
      if (times === undefined || !Array.isArray(expected)) return [{ at, expected, got: null }];
      const got = [times.q05, times.q50, times.q95];
      return expected.every((each, i) => near(each, got[i] ?? null)) ? [] : [{ at, expected, got }];
    });
  });
}

function noiseFreeDifferences(set: ScienceSet, cooling: Cooling): Difference[] {
  const { Ti, Ta } = set.truth_model;
  return set.t_h.flatMap((t, i): Difference[] => {
    const left = t === 0 ? 1 : cooling.theta(t);
    const got = left === null ? null : Ta + (Ti - Ta) * left;
    const expected = set.noise_free_F[i];
    return expected !== undefined && got !== null && Math.abs(got - expected) <= NOISE_FREE
      ? []
      : [{ at: `noise_free_F at ${t} h`, expected, got }];
  });
}

/** When the centre passes the target within the time of the set; null when it does not. */
function trueTime({ Ti, Ta, tmax_h: end }: TruthModel, centre: Cooling, target: number): number | null {
  const wanted = (target - Ta) / (Ti - Ta);
  const gap = (t: number): number => (centre.theta(t) ?? 1) - wanted;
  return wanted > 0 && wanted < 1 && gap(end) <= 0 ? bisect(gap, 1 / 3600, end) : null;
}

function truthDifferences(set: ScienceSet, centre: Cooling): Difference[] {
  return Object.entries(set.truth).flatMap(([name, expected]): Difference[] => {
    if (expected === null) return []; // never, or not asked
    const got = trueTime(set.truth_model, centre, targetOf(name));
    return got !== null && Math.abs(got - expected) <= TRUE_TIME
      ? []
      : [{ at: `truth.${name}`, expected, got }];
  });
}

/**
 * A food that was moved or stirred: either the readings as one series do not fit, or the series that starts with the
 * first reading after the last disturbance gives no time, or a range that holds the true one.
 */
function disturbedDifferences(set: ScienceSet): Difference[] {
  const { truth_model: model } = set;
  const { events = [], stir = [] } = model.geom === 'slab_fv' ? model : {};
  const known70 = known(events.at(-1)?.[1] ?? model.Ta);
  const whole = posterior(first(set, set.t_h.length), known70, [70], GRID);
  if (whole?.fits === false) return [];
  const last = Math.max(0, ...stir, ...events.map(([at]) => at));
  const from = set.t_h.findIndex((t) => t >= last);
  const since = { t: set.t_h.slice(from), y: set.readings_F.slice(from) };
  const [said] = outlook(since, known70, [70], GRID);
  if (said?.say !== 'range') return [];
  const truth = (set.truth.t70_h ?? Infinity) - (since.t[0] ?? 0);
  const holds = said.earliest <= truth && truth <= (said.latest ?? Infinity);
  return holds ? [] : [{ at: 'since the last disturbance', expected: truth, got: said }];
}

/** Where the answers of lib/science differ from a set. */
export function setDifferences(set: ScienceSet): Difference[] {
  const { truth_model: model } = set;
  if (model.geom === 'slab_fv') return disturbedDifferences(set);
  const probed = coolingOf(bodyOf(model), model, model.pos ?? 0);
  const centre = coolingOf(bodyOf(model), model);
  if (probed === null || centre === null) return [{ at: 'truth_model', expected: 'in range', got: null }];
  return [
    ...noiseFreeDifferences(set, probed),
    ...truthDifferences(set, centre),
    ...quantileDifferences(set),
  ];
}
