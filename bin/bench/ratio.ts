/** What one side of a comparison took, in the same unit on both sides. */
export type Side = { name: string; values: number[] };

export const quantile = (values: readonly number[], q: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const at = Math.min(sorted.length - 1, Math.max(0, Math.ceil(q * sorted.length) - 1));
  return sorted[at] ?? Number.NaN;
};

/** One line: ours over theirs at the quantile, against the goal. A figure of one run on one machine. */
export function ratioLine(
  what: string,
  ours: Side,
  theirs: Side,
  q: number,
  goal: number,
  unit: string,
): string {
  const a = quantile(ours.values, q);
  const b = quantile(theirs.values, q);
  const verdict = a / b <= goal ? 'within the goal' : 'OVER the goal';
  const at = q === 0.5 ? 'median' : `p${q * 100}`;
  return `${what}: ${(a / b).toFixed(2)}× (goal ≤ ${goal}×, ${verdict}); ${at} ${ours.name} ${a.toFixed(3)} ${unit}, ${theirs.name} ${b.toFixed(3)} ${unit}, ${ours.values.length} and ${theirs.values.length} values`;
}
