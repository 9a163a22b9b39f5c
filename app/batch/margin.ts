import Big from 'big.js';
import type { JudgedRun } from '#lib/fold/book.ts';
import { worstLook } from '#lib/fold/pieces.ts';
import type { Stage } from '#lib/judge/answer.ts';
import { converted, type Unit } from '#shared/units.ts';

/** How far the worst figure of a step lies from its limit, in the limit's unit. Negative = on the wrong side. */
export type Margin = { value: number; unit: Unit; piece: number | null };

/** @returns null where nobody read the food or the rule has no figure of degrees */
export function margin(run: Pick<JudgedRun, 'looks' | 'step'>, stage: Stage): Margin | null {
  const { limit } = stage;
  if (limit === null) return null;
  const worst = worstLook(
    run.looks.filter((look) => look.spot !== 'air'),
    run.step,
  );
  if (worst === null) return null;
  const off = new Big(converted(worst.value, worst.unit, limit.unit)).minus(limit.value);
  const below = limit.comparison === 'at_or_below' || limit.comparison === 'below';
  return { value: (below ? off.times(-1) : off).toNumber(), unit: limit.unit, piece: worst.piece };
}
