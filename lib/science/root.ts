/**
 * The root of `f` between `lo` and `hi` by halving; `f` changes sign once in between, and only its sign at `hi` is
 * asked, so `lo` may be a place where `f` is not defined. No library: no well-kept small one was found.
 */
export function bisect(f: (x: number) => number, lo: number, hi: number, halvings = 100): number {
  const above = f(hi) > 0;
  let low = lo;
  let high = hi;
  for (let i = 0; i < halvings; i += 1) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (f(middle) > 0 === above) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

const golden = (Math.sqrt(5) - 1) / 2;

/** The place of the least value of `f` between `lo` and `hi` (golden section; `f` falls, then rises). */
export function leastPlace(f: (x: number) => number, lo: number, hi: number, steps = 80): number {
  let low = lo;
  let high = hi;
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let atLeft = f(left);
  let atRight = f(right);
  for (let i = 0; i < steps && high > low; i += 1) {
    if (atLeft <= atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - golden * (high - low);
      atLeft = f(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + golden * (high - low);
      atRight = f(right);
    }
  }
  return (low + high) / 2;
}
