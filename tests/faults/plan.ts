/** When and whom a round kills. */
export type Round = { n: number; victim: 'server' | 'database' | 'both'; receipts: number; ms: number };

const victims = ['server', 'database', 'both'] as const;

/** Rounds at random moments; the same seed gives the same plan. Each victim has its turn. */
export function killPlan(seed: number, count: number): Round[] {
  const random = randomFrom(seed);
  return Array.from({ length: count }, (_, n) => ({
    n: n + 1,
    victim: victims[n % victims.length] ?? 'server',
    receipts: 1 + Math.floor(random() * 50),
    ms: Math.floor(random() * 20),
  }));
}

/** Numbers in [0, 1), the same for the same seed (a linear congruential generator, Numerical Recipes' constants). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
