import fc from 'fast-check';
import type { JudgedReading } from '#lib/judge/record.ts';
import { at, reading } from './records.ts';

/**
 * A true curve: °F at minutes, straight between its corners, so that its crossings can be worked out. One place of
 * the food, or with `lead` another place that is ahead of it by so many degrees.
 */
export type Curve = { corners: readonly { minute: number; degF: number }[] };

export function valueAt({ corners }: Curve, minute: number): number {
  const next = corners.findIndex((corner) => corner.minute >= minute);
  const to = corners[next] ?? corners.at(-1);
  const from = corners[next - 1] ?? to;
  if (to === undefined || from === undefined) return Number.NaN;
  if (to === from || to.minute === from.minute) return to.degF;
  return from.degF + ((to.degF - from.degF) * (minute - from.minute)) / (to.minute - from.minute);
}

/** The minute at which a curve that only falls (or only rises) passes a figure; infinite when it never does. */
export function crossing({ corners }: Curve, degF: number): number {
  const [first] = corners;
  const last = corners.at(-1);
  if (first === undefined || last === undefined) return Number.NaN;
  const isFalling = last.degF < first.degF;
  const isPast = (value: number): boolean => (isFalling ? value <= degF : value >= degF);
  if (isPast(first.degF)) return Number.NEGATIVE_INFINITY;
  for (let place = 1; place < corners.length; place++) {
    const [a, b] = [corners[place - 1], corners[place]];
    if (a === undefined || b === undefined || !isPast(b.degF)) continue;
    return a.minute + ((degF - a.degF) / (b.degF - a.degF)) * (b.minute - a.minute);
  }
  return Number.POSITIVE_INFINITY;
}

/** `longest`: of one stretch, in minutes. Curves of four stretches from one temperature to another, falling or rising all the way. */
export const curves = (from: number, to: number, longest = 150): fc.Arbitrary<Curve> =>
  fc
    .record({
      lengths: fc.array(fc.integer({ min: 2, max: longest }), { minLength: 4, maxLength: 4 }),
      shares: fc.array(fc.integer({ min: 1, max: 10 }), { minLength: 4, maxLength: 4 }),
      start: fc.integer({ min: 0, max: 15 }),
      end: fc.integer({ min: 0, max: 15 }),
    })
    .map(({ lengths, shares, start, end }) => {
      const sign = Math.sign(to - from);
      const [first, last] = [from - sign * start, to - sign * end];
      const total = shares.reduce((sum, share) => sum + share, 0);
      let minute = 0;
      let share = 0;
      const corners = [{ minute, degF: first }];
      shares.forEach((one, place) => {
        minute += lengths[place] ?? 0;
        share += one;
        corners.push({ minute, degF: first + ((last - first) * share) / total });
      });
      return { corners };
    });

/** Minutes at which somebody looked, and how far off the thermometer was each time, in units of the greatest error. */
export const looks = (last: number) =>
  fc.array(
    fc.record({
      minute: fc.integer({ min: 0, max: last }),
      off: fc.constantFrom(-1, -0.5, 0, 0.5, 1),
      spot: fc.constantFrom('inside' as const, 'outside' as const),
    }),
    { minLength: 1, maxLength: 16 },
  );
export type Seen = { minute: number; off: number; spot: 'inside' | 'outside' };

/** What the thermometer showed: the thick part for `inside`, the thin end for `outside`. */
export const readingsOf = (
  seen: readonly Seen[],
  inside: (minute: number) => number,
  outside: (minute: number) => number,
  error: number,
): JudgedReading[] =>
  seen.map(({ minute, off, spot }) => {
    const truth = spot === 'inside' ? inside(minute) : outside(minute);
    return {
      ...reading(minute, truth + off * error, { spot: spot === 'inside' ? 'core' : 'edge', held_s: 15 }),
      at: at(minute),
    };
  });
