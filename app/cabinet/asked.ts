import type { Told } from '#lib/between/cabinet-looks.ts';
import { converted, type Unit } from '#shared/units.ts';

/** What may stand in the address of a cabinet's page. */
export type CabinetAsked = { days?: string; from?: string; to?: string; minutes?: string };

export const windows = [14, 60] as const;

/** How far back: one of the two, else the shorter. */
export const daysOf = ({ days }: CabinetAsked): (typeof windows)[number] =>
  windows.find((each) => String(each) === days) ?? windows[0];

const number = (typed: string | undefined): number =>
  Number((typed ?? '').trim().replace(',', '.') || Number.NaN);

/** A trial as typed, °F; null = none was typed; "wrong" = it cannot be read, or takes no time. */
export function toldOf(asked: CabinetAsked, unit: Unit): Told | null | 'wrong' {
  if (!asked.from && !asked.to && !asked.minutes) return null;
  const [from, to, minutes] = [number(asked.from), number(asked.to), number(asked.minutes)];
  if (![from, to, minutes].every(Number.isFinite) || minutes <= 0 || from === to) return 'wrong';
  return { from: converted(from, unit, 'degF'), to: converted(to, unit, 'degF'), minutes };
}
