import type { Quantiles, Uncertain } from '#lib/science/forecast.ts';
import type { TimedReadings } from '#lib/science/profile-fit.ts';
import { lags, qAt } from '#lib/science/sphere-lag.ts';

const RATES = 300;
const AIRS = 5;
const [FIRST_RATE, LAST_RATE] = [0.02, 4];

type Node = { weight: number; times: number[] };

/**
 * The forecast's grid written as its definition reads: every node by itself, each reading's sum exact, then all nodes
 * sorted by time. Slow, and so the measure of what the table and the kept sums of lib/science/forecast are worth.
 */
export function plainForecast(
  { t, y }: TimedReadings,
  known: Uncertain,
  targets: readonly number[],
): Quantiles[] {
  const [t1 = 0] = t;
  const [y1 = 0] = y;
  const variance = known.s ** 2 + known.sModel ** 2;
  const nodes: (Node & { chi2: number })[] = [];
  for (const lag of lags())
    for (let place = 0; place < AIRS; place += 1) {
      const z = -1.5 + (3 * place) / (AIRS - 1);
      const air = known.air + z * known.sAir;
      const qs = targets.map((target) => qAt(lag, (target - air) / (y1 - air)));
      for (let m = 0; m < RATES; m += 1) {
        const rate = FIRST_RATE * (LAST_RATE / FIRST_RATE) ** (m / (RATES - 1));
        let chi2 = z * z;
        for (let i = 1; i < t.length; i += 1) {
          const predicted = air + (y1 - air) * lag.exact(rate * ((t[i] ?? 0) - t1));
          chi2 += ((y[i] ?? 0) - predicted) ** 2 / variance;
        }
        nodes.push({ chi2, weight: 0, times: qs.map((q) => q / rate) });
      }
    }
  const least = nodes.reduce((lowest, { chi2 }) => Math.min(lowest, chi2), Infinity);
  for (const node of nodes) node.weight = Math.exp(-(node.chi2 - least) / 2);
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  return targets.map((_, target) => quantiles(nodes, target, total));
}

function quantiles(nodes: readonly Node[], target: number, total: number): Quantiles {
  const inTime = [...nodes].sort((a, b) => (a.times[target] ?? 0) - (b.times[target] ?? 0));
  const at = (share: number): number | null => {
    let sum = 0;
    for (const { weight, times } of inTime) {
      sum += weight;
      if (sum >= share * total) return Number.isFinite(times[target]) ? (times[target] ?? null) : null;
    }
    return null;
  };
  return { q05: at(0.05), q50: at(0.5), q95: at(0.95) };
}
