import type { Book, Look } from '#lib/fold/book.ts';
import { high, low } from '#lib/judge/compare.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import { type Guarded, guardBand } from '#lib/science/thermometer.ts';
import type { Body } from '#shared/entries/entry.ts';
import { converted } from '#shared/units.ts';
import { runsHeld, type Side } from './cabinet-record.ts';
import type { Allowed } from './probe-record.ts';

/**
 * What the error of a thermometer leaves of a limit, in its own unit. Beyond `from` a reading is beyond the limit even
 * if the thermometer is off by all that it may be; up to `until` on the other side it is not; in between the error
 * decides. It changes no verdict, which compares the value itself with the limit. Class S; within and below: A.
 */
export type Guard = {
  side: Side;
  figure: TemperatureFigure;
  limit: number;
  /** The half-width that it may be off by, and the standard uncertainty that is worked out from it. */
  half: number;
  u: number;
  from: number;
  until: number;
  a95: number;
  /** Its last reading of food held at this limit, as far as this book goes. */
  last: (Guarded & { look: Look; value: number }) | null;
};

/** Of a limit to stay above, and of one to stay below, where the limits in force have them. */
export function guardsOf(book: Book, probe: Body<'probe'>, allowed: Allowed | null): Guard[] {
  if (allowed === null) return [];
  const figures = book.limits.profile?.figures;
  return [
    ...one(book, probe, allowed.value, 'hot', figures?.hot_hold ?? null),
    ...one(book, probe, allowed.value, 'cold', figures?.cold_hold ?? null),
  ];
}

function one(
  book: Book,
  probe: Body<'probe'>,
  half: number,
  side: Side,
  figure: TemperatureFigure | null,
): Guard[] {
  const limit = figure === null ? null : published(figure, probe.unit);
  if (figure === null || limit === null) return [];
  // An upper limit is a lower one with the signs changed.
  const sign = side === 'hot' ? 1 : -1;
  const u = Math.hypot(half / Math.sqrt(3), probe.step / Math.sqrt(12));
  const guarded = (value: number): Guarded | null => guardBand(sign * value, sign * limit, half, u);
  const at = guarded(limit);
  if (at === null) return [];
  const look = lastLook(book, probe.probe, side);
  const value =
    look === null ? null : converted(side === 'hot' ? low(look) : high(look), look.unit, probe.unit);
  const found = value === null ? null : guarded(value);
  return [
    {
      side,
      figure,
      limit,
      half,
      u,
      from: sign * at.acceptanceLimit,
      until: limit - sign * half,
      a95: sign * at.a95,
      last: look === null || value === null || found === null ? null : { ...found, look, value },
    },
  ];
}

/** As the rule prints it in the thermometer's unit; a rule that prints one unit only is converted, never rounded. */
function published({ value, first }: TemperatureFigure, unit: Body<'probe'>['unit']): number | null {
  const own = value[unit];
  if (own !== null) return own;
  const other = value[first];
  return other === null ? null : converted(other, first, unit);
}

function lastLook(book: Book, probe: string, side: Side): Look | null {
  let last: Look | null = null;
  for (const run of runsHeld(book, side))
    for (const look of run.looks)
      if (
        look.probe === probe &&
        !look.suspect &&
        look.spot !== 'air' &&
        (last === null || look.at > last.at)
      )
        last = look;
  return last;
}
