import type { Profile } from '#lib/limits/profile.ts';

/** Ways of cooling that a text names (FDA Food Code 3-501.15): message keys under `method`. Advice, no verdict. */
export type CoolingAdvice = { section: string; methods: readonly string[] };

/** Null: the profile names no ways of cooling. */
export function coolingAdvice({ figures }: Profile): CoolingAdvice | null {
  const { cooling_methods: named } = figures;
  return named === null ? null : { section: named.asked.section, methods: named.methods };
}
