import { rootOf } from './conduction.ts';
import { bisect } from './root.ts';

/**
 * The centre of a sphere as a function of q = k·t alone, for 22 lag factors j = 1 … 2: θ_j(q) = Σ C_n e^(−g_n q),
 * g_n = (μ_n/μ_1)². The centre of any body follows, after scaling of time, nearly the centre of some sphere.
 */
export const LAGS = 22;
const TERMS = 40;
const LEAST_LN_BI = Math.log(1e-4);
const MOST_LN_BI = Math.log(1e5);
/** A term e^(−x) beyond this is nothing in a double. */
const NOTHING = 40;

/** The table is equally spaced in ln q, so that readings and rates spaced in ln k fall onto it by adding. */
const LN_FIRST = Math.log(1e-4);
const LN_LAST = Math.log(64);
const ROWS = 1536;
const SPACING = (LN_LAST - LN_FIRST) / (ROWS - 1);

function terms(place: number): { g: number[]; c: number[] } {
  if (place === 0) return { g: [1], c: [1] };
  const j = 1 + place / (LAGS - 1);
  const lnBi =
    place === LAGS - 1
      ? MOST_LN_BI
      : bisect((ln) => rootOf('sphere', Math.exp(ln), 1).factor - j, LEAST_LN_BI, MOST_LN_BI, 60);
  const roots = Array.from({ length: TERMS }, (_, n) => rootOf('sphere', Math.exp(lnBi), n + 1));
  const first = roots[0]?.mu ?? 1;
  return { g: roots.map(({ mu }) => (mu / first) ** 2), c: roots.map(({ factor }) => factor) };
}

function sum({ g, c }: { g: readonly number[]; c: readonly number[] }, q: number): number {
  let total = 0;
  for (let n = 0; n < g.length; n += 1) {
    const rate = (g[n] ?? 0) * q;
    if (rate > NOTHING) break;
    total += (c[n] ?? 0) * Math.exp(-rate);
  }
  return total;
}

export type Lag = {
  /** θ_j(q), summed. */
  exact: (q: number) => number;
  /** θ_j at the rows of the table. */
  table: Float64Array;
};

let built: readonly Lag[] | null = null;

/** The 22 lags, made once (about 15 ms on a desk machine) and kept. A screen may call it before it is asked. */
export function lags(): readonly Lag[] {
  built ??= Array.from({ length: LAGS }, (_, place) => {
    const series = terms(place);
    const exact = (q: number): number => (q === 0 ? 1 : sum(series, q));
    return {
      exact,
      table: Float64Array.from({ length: ROWS }, (__, i) => exact(Math.exp(LN_FIRST + i * SPACING))),
    };
  });
  return built;
}

/** θ at ln q between two rows, straight: nearer than 1e-5. Before the table the centre has not moved. */
export function between(table: Float64Array, lnQ: number): number {
  const at = (lnQ - LN_FIRST) / SPACING;
  if (at <= 0) return 1;
  if (at >= ROWS - 1) return 0;
  const row = Math.floor(at);
  const low = table[row] ?? 0;
  return low + (at - row) * ((table[row + 1] ?? 0) - low);
}

const FIRST_Q = 0.001;
const LAST_Q = 60;

/** The q in 0.001 … 60 at which θ_j(q) = `wanted`; 0 when it is passed at once, Infinity when it never is. */
export function qAt({ exact, table }: Lag, wanted: number): number {
  if (wanted <= 0) return Infinity;
  if (wanted >= 1 || wanted > exact(FIRST_Q)) return 0;
  // The table falls all the way, so halving over its rows brackets the root for a few exact sums.
  let [low, high] = [0, ROWS - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((table[middle] ?? 0) > wanted) low = middle;
    else high = middle;
  }
  const from = Math.max(FIRST_Q, Math.exp(LN_FIRST + (low - 1) * SPACING));
  const to = Math.min(LAST_Q, Math.exp(LN_FIRST + (high + 1) * SPACING));
  return bisect((q) => exact(q) - wanted, from, to, 45);
}
