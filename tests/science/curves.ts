import type { Chance } from '../truth/chance.ts';

/**
 * A core temperature that keeps exactly to an assumption: it never falls faster than k (T − coldest) and never warms
 * faster than g. Pieces of at most ten minutes, each Newton's fall toward some air at some rate, or a straight rise.
 */
export type Curve = {
  hours: number;
  at: (t: number) => number;
  /** Hours below `level` from `from` to `to`. */
  below: (level: number, from: number, to: number) => number;
};

type Piece = { from: number; start: number; air: number; k: number; rise: number };

export type Held = { k: number; coldest: number; g: number };

export function curveOf(chance: Chance, { k, coldest, g }: Held, start: number, hours: number): Curve {
  const pieces: Piece[] = [];
  const value = ({ from, start: y, air, k: rate, rise }: Piece, t: number): number =>
    rise > 0 ? y + rise * (t - from) : air + (y - air) * Math.exp(-rate * (t - from));
  let y = start;
  for (let from = 0; from < hours; ) {
    const piece = drawn(chance, { from, start: y }, { k, coldest, g });
    pieces.push(piece);
    from += chance.between(0.02, 0.17);
    y = value(piece, from);
  }
  const pieceAt = (t: number): Piece => pieces.findLast(({ from }) => from <= t) ?? (pieces[0] as Piece);
  const below = (level: number, from: number, to: number): number => {
    let sum = 0;
    for (const [place, piece] of pieces.entries()) {
      const a = Math.max(from, piece.from);
      const b = Math.min(to, pieces[place + 1]?.from ?? hours);
      if (b > a) sum += belowIn((t) => value(piece, t), level, a, b);
    }
    return sum;
  };
  return { hours, at: (t) => value(pieceAt(t), t), below };
}

function drawn(chance: Chance, at: { from: number; start: number }, { k, coldest, g }: Held): Piece {
  const rising = g > 0 && chance.is(0.5) ? g * chance.between(0.2, 1) : 0;
  const fastest = chance.is(0.3);
  const air = fastest ? coldest : chance.between(coldest, at.start);
  return { ...at, air, k: fastest ? k : k * chance.unit(), rise: rising };
}

/** Hours below `level` of a curve that only rises or only falls between a and b. */
export function belowIn(value: (t: number) => number, level: number, a: number, b: number): number {
  const [atA, atB] = [value(a) < level, value(b) < level];
  if (atA === atB) return atA ? b - a : 0;
  let [low, high] = [a, b];
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (value(middle) < level === atA) low = middle;
    else high = middle;
  }
  return atA ? low - a : b - high;
}
