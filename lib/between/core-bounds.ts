import { type Assumed, boundsByStretch } from '#lib/science/bounds.ts';
import { assumed } from './assumed.ts';
import { allOff, type Span } from './off.ts';
import { hour, type Reading } from './readings.ts';

/** `above` and `below` are bounds of the probed core; `not_shown` is what the bounds leave open. */
export type CoreStretch = Span & { kind: 'above' | 'below' | 'not_shown' | 'inconsistent' };

export type CoreBounds = {
  stretches: CoreStretch[];
  /** Minutes from `from` to `to`: at least below, at most below, surely at or above, of readings that cannot be. */
  belowLeast: number;
  belowMost: number;
  above: number;
  inconsistent: number;
};

export type CoreAsked = {
  /** Of the core of one piece, °F, in order. */
  readings: readonly Reading[];
  limit: number;
  /** 1/h. */
  kMax: number;
  /** When the heat was off; elsewhere it may have been on. */
  off: readonly Span[];
  /** What is asked about: before the first reading nothing is known, after the last the core falls no faster than it can. */
  from: number;
  to: number;
};

/**
 * For how long a core was at or above its limit, below it, or nobody can say, from its readings, its size and the
 * hours in which the heat was off. Null: fewer than one reading, or readings at or under the assumed surroundings.
 * Above is class S, below and inconsistent class A; it speaks of the core alone and shows no hold as kept.
 */
export function coreBounds(asked: CoreAsked): CoreBounds | null {
  const { readings, from, to } = asked;
  const first = readings[0];
  const last = readings.at(-1);
  if (first === undefined || last === undefined || to < from) return null;
  if (readings.some(({ value, u }) => value - u <= assumed.coldestRoom)) return null;
  const stretches: CoreStretch[] = [];
  if (first.at > from) stretches.push({ kind: 'not_shown', from, to: first.at });
  for (let i = 1; i < readings.length; i += 1) {
    const [a, b] = [readings[i - 1], readings[i]];
    if (a === undefined || b === undefined) return null;
    const found = between(a, b, asked);
    if (found === null) return null;
    stretches.push(...found);
  }
  stretches.push(...afterLast(last, asked));
  return summed(stretches, from, to);
}

/** Hours for which a core keeps above the limit at least, left to itself; 0 when it may be under it already. */
export function hoursAbove(last: Reading, limit: number, kMax: number): number {
  const low = last.value - last.u - assumed.coldestRoom;
  const room = limit - assumed.coldestRoom;
  return low <= room ? 0 : Math.log(low / room) / kMax;
}

function afterLast(last: Reading, { limit, kMax, to, off }: CoreAsked): CoreStretch[] {
  if (to <= last.at) return [];
  if (last.value + last.u < limit && allOff(off, last.at, to)) return [{ kind: 'below', from: last.at, to }];
  const until = Math.min(to, last.at + hoursAbove(last, limit, kMax) * hour);
  return pieces(last.at, [
    ['above', until - last.at],
    ['not_shown', to - until],
  ]);
}

/** Two neighbours: where in the stretch the parts lie that `boundsByStretch` measures. */
function between(a: Reading, b: Reading, { limit, kMax, off }: CoreAsked): CoreStretch[] | null {
  const u = Math.max(a.u, b.u);
  const gMax = allOff(off, a.at, b.at) ? 0 : assumed.anyHeating;
  const given: Assumed = { u, limit, kMax, coldest: assumed.coldestRoom, gMax };
  const found = boundsByStretch(
    [
      { t: 0, y: a.value },
      { t: (b.at - a.at) / hour, y: b.value },
    ],
    given,
  );
  const [stretch] = found?.stretches ?? [];
  if (stretch === undefined) return null;
  if (stretch === 'inconsistent') return [{ kind: 'inconsistent', from: a.at, to: b.at }];
  const [safe, below] = stretch.map((hours) => hours * hour);
  // At most one of the two is at each end: the start follows from the first reading, the end from the second.
  const safeFirst =
    a.value - u >= limit ? Math.min(safe ?? 0, hoursAbove({ ...a, u }, limit, kMax) * hour) : 0;
  const belowFirst =
    a.value + u < limit
      ? Math.min(below ?? 0, gMax === 0 ? b.at - a.at : ((limit - a.value - u) / gMax) * hour)
      : 0;
  const safeLast = (safe ?? 0) - safeFirst;
  const belowLast = (below ?? 0) - belowFirst;
  const open = b.at - a.at - (safe ?? 0) - (below ?? 0);
  return pieces(a.at, [
    ['above', safeFirst],
    ['below', belowFirst],
    ['not_shown', open],
    ['below', belowLast],
    ['above', safeLast],
  ]);
}

const least = 1; // ms: a shorter part is rounding

function pieces(from: number, parts: readonly (readonly [CoreStretch['kind'], number])[]): CoreStretch[] {
  let at = from;
  return parts.flatMap(([kind, length]) => {
    const start = at;
    at += length;
    return length < least ? [] : [{ kind, from: start, to: at }];
  });
}

function summed(all: readonly CoreStretch[], from: number, to: number): CoreBounds {
  const stretches = all
    .map((one) => ({ ...one, from: Math.max(one.from, from), to: Math.min(one.to, to) }))
    .filter((one) => one.to > one.from);
  const minutes = (kind: CoreStretch['kind']): number =>
    stretches.filter((one) => one.kind === kind).reduce((sum, one) => sum + (one.to - one.from), 0) / 60_000;
  const above = minutes('above');
  return {
    stretches,
    above,
    belowLeast: minutes('below'),
    belowMost: Math.max(0, (to - from) / 60_000 - above),
    inconsistent: minutes('inconsistent'),
  };
}
