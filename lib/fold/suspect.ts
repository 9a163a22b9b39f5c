/** A check of one probe, judged: instant (ms) and whether it was kept. */
export type JudgedCheck = { entry: string; at: number; kept: boolean };

/**
 * Which failed checks make a reading suspect (docs/judge.md 4.9): those of its probe between the last good check
 * before the reading and the next good check after it. Readings made after a failed check and before the next
 * good one are suspect as well. A reading at the very moment of a good check is proven by it.
 * @param checks of the reading's probe, in order of time
 */
export function failedChecksFor(at: number, checks: readonly JudgedCheck[]): string[] {
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const check of checks) {
    if (!check.kept) continue;
    if (check.at === at) return [];
    if (check.at < at) from = Math.max(from, check.at);
    else to = Math.min(to, check.at);
  }
  return checks.filter(({ kept, at: when }) => !kept && when > from && when < to).map(({ entry }) => entry);
}
