import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import type { Reason } from './answer.ts';
import { high, type Line, line, low } from './compare.ts';
import { naturalCold, naturalHot } from './evidence.ts';
import type { JudgedReading, StepRecord } from './record.ts';

/** The figure that this food is held to, and the lower one under which a contested allowance neither proves nor breaks. */
export type HeldTo = {
  limit: Line;
  surface: Line | null; // where the surface has a figure of its own
  disputedFrom: Line | null;
  section: string;
  /** Which side of the limit keeps it, and what each place of the food says there. */
  side: HoldSide;
};

/**
 * Hot and cold holding are one rule in a mirror (docs/judge.md 4.1 and 4.5). `surest` is the place that goes first:
 * a good look there ends every stretch; `onlyBreaks` is the place that goes last and proves nothing.
 */
export type HoldSide = {
  isHot: boolean;
  surest: Spot;
  onlyBreaks: Spot;
  onlyReason: Reason; // only that place was read
  value: (reading: JudgedReading) => number; // of typed and corrected the worse
  natural: (spot: Spot | null) => boolean;
};

export const hotSide: HoldSide = {
  isHot: true,
  surest: 'coldest',
  onlyBreaks: 'warmest',
  onlyReason: 'warmest_only',
  value: low,
  natural: naturalHot,
};

export const coldSide: HoldSide = {
  isHot: false,
  surest: 'warmest',
  onlyBreaks: 'coldest',
  onlyReason: 'coldest_only',
  value: high,
  natural: naturalCold,
};

/** Whether a value lies on the bad side of a line. */
export const isBeyond = (side: HoldSide, line: Line, value: number, unit: Unit): boolean =>
  side.isHot ? value < line[unit] : value >= line[unit];

/** The line that a reading of this spot is held to. */
export const lineOf = (to: HeldTo, spot: Spot | null): Line =>
  spot === 'surface' && to.surface !== null ? to.surface : to.limit;

/**
 * 130 °F for an intact roast whose cook is shown by the chart and the oven line; contested where it is not shown;
 * 135 °F for everything else, a class not known included. Null: the profile has no hot-holding figure.
 */
export function heldTo(record: StepRecord, { figures }: Profile): HeldTo | null {
  const { hot_hold: hot, hot_hold_roast: roast } = figures;
  if (hot === null) return null;
  const surface = figures.hot_hold_surface === null ? null : line(figures.hot_hold_surface);
  if (roast === null || record.food.class !== 'intact_roast')
    return { limit: line(hot), surface, disputedFrom: null, side: hotSide, section: hot.section };
  if (record.facts.roast_cook === 'kept')
    return { limit: line(roast), surface, disputedFrom: null, side: hotSide, section: roast.section };
  const disputed = record.facts.roast_cook === 'not_shown';
  return {
    limit: line(hot),
    surface,
    disputedFrom: disputed ? line(roast) : null,
    side: hotSide,
    section: hot.section,
  };
}

/** 41 °F or below for every food, with no allowance. Null: the profile has no cold-holding figure. */
export function coldTo({ figures }: Profile): HeldTo | null {
  const { cold_hold: cold } = figures;
  return cold === null ? null : heldAtMost(cold);
}

/** A figure that the food has to stay at or below: cold holding, and cold food kept by time. */
export const heldAtMost = (figure: TemperatureFigure): HeldTo => ({
  limit: line(figure),
  surface: null,
  disputedFrom: null,
  side: coldSide,
  section: figure.section,
});

/** A line that no finite value crosses: for a profile without a figure only the looks count, by the house plan. */
const noLine = (value: number): Line => ({
  degF: value,
  degC: value,
  nearLowF: value,
  nearHighF: value,
  nearLowC: value,
  nearHighC: value,
  figure: { degF: value, degC: value },
  limit: { value: 0, unit: 'degF', comparison: 'at_or_above' },
});

const noFigureFor = (side: HoldSide): HeldTo => ({
  limit: noLine(side.isHot ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY),
  surface: null,
  disputedFrom: null,
  side,
  section: '',
});

/** What a hold is passed over with where the profile has no figure for it. */
export const noFigureHot: HeldTo = noFigureFor(hotSide);
export const noFigureCold: HeldTo = noFigureFor(coldSide);
