import { type BoundReading, boundsByStretch, kMax } from '#lib/science/bounds.ts';
import { type Kind, kind, named } from './kind.ts';

/** Bounds between sparse readings (file 07). */
export const bounds: Record<string, Kind> = {
  k_max: kind('k_max', ({ number, numbers }) => ({ k_max: kMax(numbers('dims'), number('alpha')) })),
  below_limit_bounds: kind(
    'shown_safe shown_below inconsistent not_shown below_lower below_upper stretches',
    ({ number, numbers, maybeText }) => {
      const y = numbers('y');
      const t = numbers('t');
      if (t.length !== y.length) throw new Error('inputs.t and inputs.y differ in length');
      const readings = t.map((at, i): BoundReading => ({ t: at, y: y[i] ?? Number.NaN }));
      const assumed = {
        u: number('u'),
        limit: number('L'),
        kMax: number('k_max'),
        coldest: number('Ta'),
        gMax: number('g_max'),
        spot: maybeText('spot') ?? 'core',
      };
      return named(boundsByStretch(readings, assumed), (found) => ({
        shown_safe: found.shownSafe,
        shown_below: found.shownBelow,
        inconsistent: found.inconsistent,
        not_shown: found.notShown,
        below_lower: found.belowLower,
        below_upper: found.belowUpper,
        stretches: found.stretches,
      }));
    },
  ),
};
